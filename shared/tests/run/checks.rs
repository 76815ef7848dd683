//! The check list before the first pull: its order, what changed since the run before, what was made.

use crate::shop::{TestShop, wall};
use lastpull_core::colour::Colour;
use lastpull_core::facts::{Fact, LotField, RunField};
use lastpull_core::ids::RunId;
use lastpull_core::job::{Fabric, Size};
use lastpull_core::run::{
    CheckItem, CheckList, CheckMade, CheckOutcome, CheckState, Expected, Flash, OtherColour, check_list, run_summary,
};
use lastpull_core::units::{BeltSpeed, Length, Seconds, Temperature};

fn dryer(fahrenheit: f64) -> RunField {
    RunField::Dryer(Some(Temperature::from_fahrenheit(fahrenheit)))
}

fn flash(seconds: f64) -> RunField {
    let distance = Some(Length::from_inches(2.5));
    RunField::Flash(Some(Flash { seconds: Seconds::new(seconds), distance }))
}

/// Every field of the set-up, filled in.
fn full_set_up() -> Vec<RunField> {
    vec![
        RunField::Placement("centred".into()),
        RunField::BelowCollar(Some(Length::from_inches(3.0))),
        RunField::OffContact(Some(Length::from_millimetres(3.0))),
        RunField::Squeegee("70, sharp".into()),
        RunField::Passes(2),
        RunField::Dwell(Some(Seconds::new(150.0))),
        RunField::Belt(Some(BeltSpeed::from_inches_per_minute(30.0))),
        dryer(320.0),
        RunField::Hits(2),
        flash(7.0),
        RunField::Mesh(Some(156)),
        RunField::Screens("12, 13".into()),
    ]
}

fn items(list: &CheckList) -> Vec<CheckItem> {
    list.rows().map(|row| row.item).collect()
}

/// The state of one check in a run's list.
fn state(press: &TestShop, run: RunId, item: CheckItem) -> CheckState {
    check_list(&press.shop(), run).rows().find(|row| row.item == item).unwrap().state.clone()
}

/// Makes a check as the list asks for it at this moment.
fn check(press: &mut TestShop, seconds: u64, run: RunId, item: CheckItem, outcome: CheckOutcome) {
    let expected = check_list(&press.shop(), run).rows().find(|row| row.item == item).unwrap().expected.clone();
    press.record_at(seconds, run, Fact::CheckMade { item, expected, outcome, by: Some("Moss".into()) });
}

/// A cotton run that was on the press, and a polyester one that comes next.
fn cotton_then_polyester(cotton: Vec<RunField>, polyester: Vec<RunField>) -> (TestShop, RunId, RunId) {
    let (mut press, first) = TestShop::with_run(&[(Size::M, 3)]);
    press.set_up(first, cotton);
    let next = press.order("Jerseys", None, Fabric::Polyester, &[(Size::M, 3)]);
    press.set_up(next, polyester).pulls(first, 0, 40, 3).end_at(100, first);
    (press, first, next)
}

#[test]
fn the_check_list_is_in_working_order_whatever_the_order_of_entry() {
    use CheckItem::{
        BelowCollar, Belt, Dryer, Dwell, FlashDistance, Garment, Hits, Ink, Mesh, OffContact, Passes, Placement,
        Screens, Squeegee,
    };
    let (mut press, run) = TestShop::with_run(&[(Size::M, 3)]);
    press.set_up(run, full_set_up());
    let list = check_list(&press.shop(), run);
    let order = [
        Dryer,
        Belt,
        Dwell,
        Passes,
        CheckItem::Flash,
        FlashDistance,
        Garment,
        Screens,
        Mesh,
        OffContact,
        Squeegee,
        BelowCollar,
        Placement,
        Ink,
        Hits,
    ];
    assert_eq!(items(&list), order);
    assert_eq!(list.open(), 15);
}

#[test]
fn fields_missing_from_the_set_up_are_not_checked() {
    let (press, run) = TestShop::with_run(&[(Size::M, 3)]);
    let list = check_list(&press.shop(), run);
    let asked = [CheckItem::Passes, CheckItem::Flash, CheckItem::Garment, CheckItem::Ink, CheckItem::Hits];
    assert_eq!(items(&list), asked);
    assert_eq!(list.unchanged[1].expected, Expected::NoFlash);
}

#[test]
fn the_first_run_of_the_shop_has_no_changes() {
    let (press, run) = TestShop::with_run(&[(Size::M, 3)]);
    let list = check_list(&press.shop(), run);
    assert_eq!((list.previous, list.changes.len(), list.needs_heat_change()), (None, 0, false));
}

#[test]
fn cotton_then_polyester_asks_for_the_dryer_first() {
    let mut cooler = full_set_up();
    cooler.extend([dryer(260.0), RunField::Ink("White".into()), RunField::Mesh(Some(230))]);
    let (mut press, first, next) = cotton_then_polyester(full_set_up(), cooler);
    let list = check_list(&press.shop(), next);
    assert_eq!(list.previous, Some(first));
    let changes: Vec<_> = list.changes.iter().map(|row| row.item).collect();
    assert_eq!(changes, [CheckItem::Dryer, CheckItem::Garment, CheckItem::Mesh, CheckItem::Ink]);
    let hot = Expected::Temperature(Temperature::from_fahrenheit(320.0));
    assert_eq!(list.changes[0].before, Some(hot));
    assert_eq!((list.unchanged.len(), list.needs_heat_change()), (11, true));
    check(&mut press, 200, next, CheckItem::Dryer, CheckOutcome::Ticked);
    assert!(!check_list(&press.shop(), next).needs_heat_change(), "only the mesh, garment and ink are still to change");
}

#[test]
fn a_dryer_setting_where_none_was_noted_before_is_a_change() {
    let (press, _, next) = cotton_then_polyester(vec![], vec![dryer(260.0), flash(7.0)]);
    let list = check_list(&press.shop(), next);
    let changes: Vec<_> = list.changes.iter().map(|row| row.item).collect();
    assert_eq!(changes, [CheckItem::Dryer, CheckItem::Flash, CheckItem::FlashDistance, CheckItem::Garment]);
    assert!(list.needs_heat_change());
}

#[test]
fn a_run_is_compared_with_the_one_that_started_last_before_it() {
    let (mut press, first) = TestShop::with_run(&[(Size::M, 3)]);
    let [second, third] = ["Totes", "Bibs"].map(|title| press.order(title, None, Fabric::Canvas, &[(Size::One, 2)]));
    press.pulls(first, 0, 40, 3).end_at(100, first).start_at(200, second);
    let before = |press: &TestShop, run| check_list(&press.shop(), run).previous;
    assert_eq!(before(&press, third), Some(second));
    assert_eq!(before(&press, second), Some(first));
    assert_eq!(before(&press, first), None);
    press.record_at(300, second, Fact::Deleted);
    assert_eq!(before(&press, third), Some(first));
}

#[test]
fn a_reopened_run_counts_as_the_last_on_the_press() {
    let (mut press, first) = TestShop::with_run(&[(Size::M, 3)]);
    let [second, third] = ["Totes", "Bibs"].map(|title| press.order(title, None, Fabric::Canvas, &[(Size::One, 2)]));
    press.start_at(0, first).end_at(100, first).start_at(200, second).end_at(300, second).start_at(400, first);
    assert_eq!(check_list(&press.shop(), third).previous, Some(first));
    assert_eq!(check_list(&press.shop(), first).previous, Some(second), "its set-up must be put back");
}

#[test]
fn a_check_says_who_made_it_and_when_until_it_is_undone() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 3)]);
    check(&mut press, 30, run, CheckItem::Ink, CheckOutcome::Ticked);
    let list = check_list(&press.shop(), run);
    let ink = list.rows().find(|row| row.item == CheckItem::Ink).unwrap();
    assert_eq!(
        (&ink.state, &ink.made),
        (&CheckState::Ticked, &Some(CheckMade { by: Some("Moss".into()), at: wall(30) }))
    );
    assert_eq!(list.open(), 4);
    check(&mut press, 60, run, CheckItem::Ink, CheckOutcome::Cleared);
    let list = check_list(&press.shop(), run);
    let ink = list.rows().find(|row| row.item == CheckItem::Ink).unwrap();
    assert_eq!((&ink.state, &ink.made, list.open()), (&CheckState::Open, &None, 5));
}

#[test]
fn a_changed_set_up_reopens_its_check_and_no_other() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 3)]);
    press.set_up(run, full_set_up());
    check(&mut press, 10, run, CheckItem::Dryer, CheckOutcome::Ticked);
    check(&mut press, 20, run, CheckItem::Mesh, CheckOutcome::Skipped);
    press.set_up(run, vec![dryer(330.0)]);
    assert_eq!(state(&press, run, CheckItem::Dryer), CheckState::Open);
    assert_eq!(state(&press, run, CheckItem::Mesh), CheckState::Skipped);
    press.set_up(run, vec![dryer(320.0)]);
    assert_eq!(state(&press, run, CheckItem::Dryer), CheckState::Ticked, "it was made against this");
}

#[test]
fn a_measured_value_is_right_within_its_tolerance_and_wrong_past_it() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 3)]);
    press.set_up(run, full_set_up());
    // 320 °F is 160 °C; 30 in/min is 12,700 µm/s, a twentieth of which is 635.
    for (item, meant, tolerance) in [
        (CheckItem::Dryer, 160_000, 5_000),
        (CheckItem::Belt, 12_700, 635),
        (CheckItem::Dwell, 150_000, 5_000),
        (CheckItem::Flash, 7_000, 1_000),
        (CheckItem::FlashDistance, 63_500, 6_350),
        (CheckItem::OffContact, 3_000, 1_000),
        (CheckItem::BelowCollar, 76_200, 6_350),
    ] {
        for (off, within) in
            [(0, true), (tolerance, true), (-tolerance, true), (tolerance + 1, false), (-tolerance - 1, false)]
        {
            let value = meant + off;
            check(&mut press, 10, run, item, CheckOutcome::Measured(value));
            assert_eq!(
                state(&press, run, item),
                CheckState::Measured { value, within, breach: None },
                "{item:?} off by {off}"
            );
        }
    }
}

#[test]
fn a_dryer_measured_too_hot_still_needs_attention_first() {
    let (mut press, _, next) = cotton_then_polyester(vec![dryer(320.0)], vec![dryer(260.0)]);
    check(&mut press, 200, next, CheckItem::Dryer, CheckOutcome::Measured(160_000));
    assert!(check_list(&press.shop(), next).needs_heat_change(), "it is still at the cotton's 160 °C");
}

#[test]
fn a_skipped_check_is_neither_open_nor_done_and_the_summary_counts_it() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 3)]);
    check(&mut press, 10, run, CheckItem::Passes, CheckOutcome::Skipped);
    check(&mut press, 20, run, CheckItem::Ink, CheckOutcome::Skipped);
    check(&mut press, 30, run, CheckItem::Ink, CheckOutcome::Ticked);
    let list = check_list(&press.shop(), run);
    assert_eq!((list.open(), list.skipped()), (3, 1));
    press.pulls(run, 40, 40, 3).end_at(200, run);
    assert_eq!(run_summary(&press.shop(), run).skipped, 1);
}

#[test]
fn a_garment_that_differs_only_in_its_colour_names_both_colours() {
    let (mut press, first) = TestShop::with_run(&[(Size::M, 3)]);
    let next = press.order("Tour tees", None, Fabric::Cotton, &[(Size::M, 3)]);
    let lot_of = |press: &TestShop, run: RunId| press.shop().run(run).unwrap().lot.unwrap();
    let [one, other] = [lot_of(&press, first), lot_of(&press, next)];
    for (lot, colour, name) in [(one, Colour::BLACK, "Violet"), (other, Colour::WHITE, "Grey")] {
        let fields =
            vec![LotField::Garment("Heavy tee".into()), LotField::Colour(colour), LotField::ColourName(name.into())];
        press.record(lot, Fact::LotSet(fields));
    }
    press.pulls(first, 0, 40, 3).end_at(100, first);
    let row = |press: &TestShop| {
        let list = check_list(&press.shop(), next);
        list.changes.into_iter().find(|row| row.item == CheckItem::Garment)
    };
    let named = |now: &str, before: &str| Some(OtherColour::Named([now.to_owned(), before.to_owned()]));
    assert_eq!(row(&press).unwrap().colours, named("Grey", "Violet"));
    // Without names, or with the same, that it is another is all that can be said.
    for (now, before, said) in [
        ("", "Violet", named("", "Violet")),
        ("", "", Some(OtherColour::Unnamed)),
        ("Red", "Red ", Some(OtherColour::Unnamed)),
    ] {
        for (lot, name) in [(one, before), (other, now)] {
            press.record(lot, Fact::LotSet(vec![LotField::ColourName(name.into())]));
        }
        assert_eq!(row(&press).unwrap().colours, said, "{now:?} after {before:?}");
    }
    press.record(other, Fact::LotSet(vec![LotField::Garment("Tote".into())]));
    let other_garment = row(&press).unwrap();
    assert!(other_garment.before.is_some());
    assert_eq!(other_garment.colours, None);
}

#[test]
fn an_ink_of_the_same_name_may_have_another_colour() {
    let (mut press, first, next) =
        cotton_then_polyester(vec![RunField::InkColour(Colour::BLACK)], vec![RunField::InkColour(Colour::WHITE)]);
    let ink = |press: &TestShop| {
        let list = check_list(&press.shop(), next);
        list.rows().find(|row| row.item == CheckItem::Ink).cloned().unwrap()
    };
    assert_eq!(ink(&press).colours, Some(OtherColour::Unnamed));
    press.set_up(next, vec![RunField::Ink("White".into())]);
    assert_eq!(ink(&press).colours, None, "the names tell them apart");
    press.set_up(first, vec![RunField::Ink("White".into()), RunField::InkColour(Colour::WHITE)]);
    assert_eq!((ink(&press).before, ink(&press).colours), (None, None));
}
