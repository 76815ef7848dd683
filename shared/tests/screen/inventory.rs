//! Screens added, edited and deleted.

use crate::shop::{TestShop, minutes, wall};
use lastpull_core::facts::Fact;
use lastpull_core::form::FormProblem;
use lastpull_core::screen::{
    BurnStep, Coats, MeshCount, MeshSheetForm, NewLabels, ScreenFact, ScreenField, ScreenFilter, ScreenForm,
    ScreenSettingsForm, ScreenState, move_facts, new_labels, screen_board, screen_card, sheet_to_copy,
};
use lastpull_core::units::LengthUnit;
use uuid::Uuid;

#[test]
fn several_screens_are_added_with_one_form() {
    let mut press = TestShop::new();
    press.screen("A2");
    let form = ScreenForm {
        label: "A1-A4".into(),
        mesh: MeshSheetForm { count: "156".into(), thickness: "98".into(), ..MeshSheetForm::default() },
        tension: "22".into(),
        ..ScreenForm::default()
    };
    let id = |index: usize| Uuid::from_u128(0x900 + index as u128);
    assert_eq!(
        new_labels(&press.shop(), &form.label),
        NewLabels { new: vec!["A1".into(), "A3".into(), "A4".into()], taken: vec!["A2".into()] }
    );
    assert_eq!(form.check_new(&press.shop(), ScreenState::Clean, None, id).unwrap_err()["label"], FormProblem::Taken);
    let wrong = ScreenForm { label: "1-99".into(), tension: "x".into(), ..form.clone() };
    let problems = wrong.check_new(&press.shop(), ScreenState::Clean, None, id).unwrap_err();
    assert!(matches!(problems["label"], FormProblem::TooMany { most: 60 }) && problems.contains_key("tension"));

    let form = ScreenForm { label: "A3, A4, B1-2".into(), ..form };
    let facts = form.check_new(&press.shop(), ScreenState::Coated, Some("Ines"), id).unwrap();
    press.record_all(facts);
    let shop = press.shop();
    let board = screen_board(&shop, &ScreenFilter::default(), wall(1));
    let coated = &board.groups[1];
    assert_eq!((coated.state, coated.count), (ScreenState::Coated, 4));
    let labels: Vec<&str> = coated.rows.iter().map(|row| row.label.as_str()).collect();
    assert_eq!(labels, ["A3", "A4", "B1", "B2"]);
    assert!(coated.rows.iter().all(|row| row.tension == Some(220) && row.mesh.unwrap().thickness_um == Some(98)));
    // Sent a second time with the same ids, they are still the same four.
    assert_eq!(form.check_new(&shop, ScreenState::Coated, None, id).map(|facts| facts.len()), Ok(0));
}

#[test]
fn the_data_sheet_of_a_mesh_is_offered_for_another_screen_of_it() {
    let mut press = TestShop::new();
    let new = press.id();
    let sheet = MeshSheetForm { count: "156".into(), thickness: "98".into(), ..MeshSheetForm::default() };
    let form = ScreenForm { label: "A".into(), mesh: sheet.clone(), ..ScreenForm::default() };
    let facts = form.check(&press.shop(), new).unwrap();
    press.record_all(facts);
    let shop = press.shop();
    let typed = |count: &str| MeshSheetForm { count: count.into(), ..MeshSheetForm::default() };
    assert_eq!(sheet_to_copy(&shop, &typed("156")).unwrap().thickness_um, Some(98));
    assert_eq!(sheet_to_copy(&shop, &typed("230")), None, "another mesh");
    assert_eq!(sheet_to_copy(&shop, &sheet), None, "it says so itself");
}

#[test]
fn a_clean_screen_carries_nothing() {
    let mut press = TestShop::new();
    let run = press.ten_minutes(None);
    let screen = press.screen("A");
    press.record(
        screen,
        Fact::Screen(ScreenFact::Set(vec![ScreenField::Run(Some(run)), ScreenField::Colour("red".into())])),
    );
    press.move_screen(5, screen, ScreenState::ToReclaim);
    let facts = move_facts(&press.shop(), &[screen], ScreenState::Clean, None);
    press.record_all(facts);
    let shop = press.shop();
    let screen = shop.screens.live(screen).unwrap();
    assert_eq!((screen.run, screen.colour.as_str(), screen.exposed), (None, "", None));
}

#[test]
fn a_restored_screen_is_as_it_was_even_if_its_deletion_arrived_first() {
    let mut press = TestShop::new();
    let screen = press.screen("A");
    press.move_screen(5, screen, ScreenState::Coated).record_at(6, screen, Fact::Deleted);
    assert_eq!(screen_card(&press.shop(), screen, wall(7)), None);
    press.record_at(8, screen, Fact::Restored);
    assert_eq!(screen_card(&press.shop(), screen, wall(9)).unwrap().screen.state, ScreenState::Coated);

    let mut press = TestShop::new();
    let id = press.id();
    press.record(id, Fact::Deleted);
    press.record(id, Fact::Screen(ScreenFact::Set(vec![ScreenField::Label("A".into())])));
    assert_eq!(press.shop().screens.iter().count(), 0);
}

#[test]
fn a_label_belongs_to_one_screen_until_that_screen_is_deleted() {
    let mut press = TestShop::new();
    let first = press.screen("A 3");
    let new = press.id();
    let form = ScreenForm { label: "a  3".into(), ..ScreenForm::default() };
    assert_eq!(form.check(&press.shop(), new).unwrap_err()["label"], FormProblem::Taken);
    assert_eq!(ScreenForm::default().check(&press.shop(), new).unwrap_err()["label"], FormProblem::Missing);
    assert!(form.check(&press.shop(), first).is_ok(), "it may keep its own");
    press.record(first, Fact::Deleted);
    assert!(form.check(&press.shop(), new).is_ok());
}

#[test]
fn an_unchanged_screen_form_reads_back_and_records_nothing() {
    let mut press = TestShop::new();
    let id = press.id();
    let form = ScreenForm {
        label: "A3".into(),
        mesh: MeshSheetForm { count: "156".into(), per: LengthUnit::Inches, ..MeshSheetForm::default() },
        tension: "24,5".into(),
        emulsion: "Dual cure".into(),
        coats_print: "1".into(),
        coats_squeegee: "2".into(),
        colour: "white".into(),
        run: None,
        notes: "corner dent".into(),
    };
    let facts = form.check(&press.shop(), id).unwrap();
    press.record_all(facts);
    let shop = press.shop();
    let screen = shop.screens.live(id).unwrap();
    assert_eq!(screen.tension, Some(245));
    assert_eq!(screen.coats, Some(Coats { print: 1, squeegee: 2 }));
    assert_eq!(screen.mesh.unwrap().count, MeshCount::PerInch(156));
    let again = ScreenForm::of(screen);
    assert_eq!(again, ScreenForm { tension: "24.5".into(), ..form });
    assert_eq!(again.check(&shop, id), Ok(vec![]));
    let wrong = ScreenForm { tension: "tight".into(), coats_print: "1.5".into(), ..again };
    let problems = wrong.check(&shop, id).unwrap_err();
    assert!(problems.contains_key("tension") && problems.contains_key("coats_print") && problems.len() == 2);
}

#[test]
fn the_screen_settings_record_only_changes() {
    let mut press = TestShop::new();
    let mut form = ScreenSettingsForm::of(&press.shop());
    assert_eq!(form.check(&press.shop()), Ok(vec![]));
    form.dry = "45".into();
    let facts = form.check(&press.shop()).unwrap();
    assert_eq!(facts.len(), 1);
    press.record_all(facts);
    assert_eq!(press.shop().screens.times.of(BurnStep::Dry), minutes(45));
    form.coated_days = "0".into();
    form.tape = "soon".into();
    assert_eq!(form.check(&press.shop()).unwrap_err().len(), 2);
}
