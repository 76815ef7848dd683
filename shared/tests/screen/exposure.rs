//! Exposures found and asked for, the lamps and emulsions they hang on, and the reclaim bath through
//! the day.

use super::mesh;
use crate::shop::{DAY, ExposureRoom, PHONE, TestShop, wall};
use lastpull_core::facts::{Entry, Fact};
use lastpull_core::form::FormProblem;
use lastpull_core::ids::SHOP;
use lastpull_core::screen::{
    Coats, ExposureAnswer, ExposureDifference, ExposureForm, ExposureMethod, ExposureMethodKind, ExposureQuery,
    ExposureRefused, LampForm, LampKind, MeshCloth, NoDistanceLaw, NoTestResult, StencilFact, TestAdvice, check_goal,
    emulsion_list, exposure_for, exposure_list, lamp_list,
};
use lastpull_core::shop::Shop;
use lastpull_core::units::{Length, NumberProblem, Seconds, Units};
use uuid::Uuid;

#[test]
fn an_exposure_that_was_found_is_known_for_its_emulsion_mesh_and_lamp() {
    let mut room = ExposureRoom::new();
    let form = ExposureForm { by: " Ines ".into(), coats_print: "2".into(), coats_squeegee: "1".into(), ..room.form() };
    let id = room.find(60, &form);
    let ExposureAnswer::Known(row) = room.answer(mesh(156, 64)) else { panic!("not known") };
    // Two steps up from 120 s: × 1.995262, the factor of step 3 in `exposure_step_guide.csv`.
    assert!((row.time.seconds() - 120.0 * 1.995_262).abs() < 0.01);
    assert_eq!(row.found, ExposureMethod::StepGuide { test: Seconds::new(120.0), solid: 5, goal: 7 });
    assert_eq!((row.id, row.at, row.by.as_deref()), (id, wall(60), Some("Ines")));
    assert_eq!((row.emulsion.as_str(), row.lamp.as_str()), ("Blue", "Bulb"));
    assert_eq!(row.coats, Some(Coats { print: 2, squeegee: 1 }));
    assert!(row.tested && row.newest);
}

#[test]
fn an_untested_mesh_gets_the_nearest_known_exposure_and_how_it_differs() {
    let mut room = ExposureRoom::new();
    assert_eq!(room.answer(mesh(156, 64)), ExposureAnswer::Unknown);
    room.find(60, &ExposureForm { mesh: "110".into(), thread: "80".into(), ..room.form() });
    let near_one = room.find(70, &ExposureForm { mesh: "230".into(), thread: "48".into(), ..room.form() });
    let ExposureAnswer::Nearest { row, differs, scaled } = room.answer(mesh(195, 48)) else { panic!("known") };
    assert_eq!((row.id, differs, scaled), (near_one, vec![ExposureDifference::Count], None));
    let dyed = MeshCloth { dyed: true, ..mesh(230, 48) };
    let ExposureAnswer::Nearest { differs, .. } = room.answer(dyed) else { panic!("known") };
    assert_eq!(differs, [ExposureDifference::Dyed]);
}

#[test]
fn the_same_lamp_counts_more_than_the_same_mesh() {
    let mut room = ExposureRoom::new();
    let other = room.press.id();
    room.find(60, &ExposureForm { lamp: Some(other), ..room.form() });
    let ExposureAnswer::Nearest { differs, .. } = room.answer(mesh(156, 64)) else { panic!("known") };
    assert_eq!(differs, [ExposureDifference::Lamp]);
    let own = room.find(70, &ExposureForm { mesh: "110".into(), ..room.form() });
    let ExposureAnswer::Nearest { row, differs, .. } = room.answer(mesh(156, 64)) else { panic!("known") };
    assert_eq!((row.id, differs), (own, vec![ExposureDifference::Count]));
}

#[test]
fn another_emulsions_exposure_is_never_offered() {
    let mut room = ExposureRoom::new();
    let red = room.press.id();
    room.find(60, &ExposureForm { emulsion: Some(red), ..room.form() });
    assert_eq!(room.answer(mesh(156, 64)), ExposureAnswer::Unknown);
}

#[test]
fn different_coats_are_reported_and_unknown_coats_are_not() {
    let mut room = ExposureRoom::new();
    let untold = room.find(60, &room.form());
    let asked = |print| ExposureQuery { coats: Some(Coats { print, squeegee: 1 }), ..room.asked(mesh(156, 64)) };
    let (one, two) = (asked(1), asked(2));
    let shop = room.press.shop();
    assert!(matches!(exposure_for(&shop, &two), ExposureAnswer::Known(row) if row.id == untold));
    let with_coats =
        room.find(70, &ExposureForm { coats_print: "2".into(), coats_squeegee: "1".into(), ..room.form() });
    room.press.record(untold, Fact::Deleted);
    let shop = room.press.shop();
    assert!(matches!(exposure_for(&shop, &two), ExposureAnswer::Known(row) if row.id == with_coats));
    let ExposureAnswer::Nearest { differs, .. } = exposure_for(&shop, &one) else { panic!("known") };
    assert_eq!(differs, [ExposureDifference::Coats]);
}

/// Source: `exposure_inverse_square.csv`: 68 min at 18.5 in is 24.0409 min at 11 in.
#[test]
fn a_lamp_at_another_distance_scales_the_time_and_asks_for_a_test() {
    let mut room = ExposureRoom::new();
    room.find(60, &ExposureForm { kind: ExposureMethodKind::Practice, time: "4080".into(), ..room.form() });
    room.set_lamp("11", LampKind::Point);
    let ExposureAnswer::Nearest { differs, scaled, .. } = room.answer(mesh(156, 64)) else { panic!("known") };
    assert_eq!(differs, [ExposureDifference::Distance]);
    assert!((scaled.unwrap().seconds() / 60.0 - 24.0409).abs() < 0.001);
    let moved =
        ExposureForm { kind: ExposureMethodKind::Distance, time: "4080".into(), from: "18.5".into(), ..room.form() };
    let preview = moved.preview(&room.press.shop(), None, Units::US).unwrap().unwrap();
    assert_eq!((preview.time, preview.advice), (scaled.unwrap(), Some(TestAdvice::TestAgain)));
    room.find(90, &moved);
    let ExposureAnswer::Known(row) = room.answer(mesh(156, 64)) else { panic!("not known") };
    assert!(!row.tested, "a computed time is not proved");
}

#[test]
fn no_time_is_computed_for_tubes_that_were_moved() {
    let mut room = ExposureRoom::new();
    room.set_lamp("18.5", LampKind::Tubes);
    room.find(60, &room.form());
    room.set_lamp("11", LampKind::Tubes);
    let ExposureAnswer::Nearest { differs, scaled, .. } = room.answer(mesh(156, 64)) else { panic!("known") };
    assert_eq!((differs, scaled), (vec![ExposureDifference::Distance], None));
    let form = ExposureForm { kind: ExposureMethodKind::Distance, from: "18.5".into(), ..room.form() };
    let refused = form.check(&room.press.shop(), None, Units::US).unwrap_err();
    assert!(refused.fields.is_empty());
    assert_eq!(refused.refused, Some(ExposureRefused::Distance(NoDistanceLaw::Tubes)));
}

#[test]
fn a_later_test_replaces_an_earlier_one_until_it_is_deleted() {
    let mut room = ExposureRoom::new();
    let early = room.find(60, &room.form());
    let late = room.find(70, &ExposureForm { solid: "6".into(), ..room.form() });
    let known = |room: &ExposureRoom| match room.answer(mesh(156, 64)) {
        ExposureAnswer::Known(row) => row.id,
        other => panic!("{other:?}"),
    };
    assert_eq!(known(&room), late);
    let newest: Vec<_> = exposure_list(&room.press.shop()).iter().map(|row| (row.id, row.newest)).collect();
    assert_eq!(newest, [(late, true), (early, false)]);
    room.press.record(late, Fact::Deleted);
    assert_eq!(known(&room), early);
    room.press.record(late, Fact::Restored);
    assert_eq!(known(&room), late);
}

#[test]
fn a_correction_keeps_the_day_the_lamp_and_the_goal_of_its_test() {
    let mut room = ExposureRoom::new();
    let id = room.find(60, &room.form());
    // Since then the lamp was moved, and the shop aims higher.
    room.set_lamp("24", LampKind::Point);
    room.tell(SHOP, check_goal("9").unwrap());
    let shop = room.press.shop();
    let before = &shop.exposure_log.exposure(id).unwrap().fact;
    let form = ExposureForm { solid: "7".into(), ..ExposureForm::of(before, Units::US) };
    let corrected = form.check(&shop, Some(before), Units::US).unwrap();
    room.press.record_at(DAY, id, Fact::Stencil(corrected));
    let rows = exposure_list(&room.press.shop());
    assert_eq!((rows.len(), rows[0].at, rows[0].time), (1, wall(60), Seconds::new(120.0)));
    assert_eq!(rows[0].distance, Some(Length::from_inches(18.5)));
}

#[test]
fn the_goal_is_step_seven_or_higher() {
    let mut room = ExposureRoom::new();
    assert_eq!(room.press.shop().exposure_log.goal(), 7);
    let problems = check_goal("6").unwrap_err();
    assert_eq!(problems["goal"], FormProblem::Number(NumberProblem::TooLow { least: 7.0 }));
    room.tell(SHOP, check_goal("8").unwrap());
    let time = room.form().preview(&room.press.shop(), None, Units::US).unwrap().unwrap();
    assert_eq!(time.found, ExposureMethod::StepGuide { test: Seconds::new(120.0), solid: 5, goal: 8 });
    assert_eq!(time.advice, Some(TestAdvice::TestAgain));
}

#[test]
fn an_exposure_form_reports_problems_by_field() {
    let room = ExposureRoom::new();
    let shop = room.press.shop();
    let problems = ExposureForm::default().check(&shop, None, Units::US).unwrap_err();
    let fields: Vec<_> = problems.fields.keys().copied().collect();
    assert_eq!(fields, ["emulsion", "lamp", "mesh", "solid", "time"]);
    assert_eq!(ExposureForm::default().preview(&shop, None, Units::US), Ok(None));
    let washed_out = ExposureForm { solid: "0".into(), ..room.form() };
    assert_eq!(washed_out.preview(&shop, None, Units::US), Err(ExposureRefused::Test(NoTestResult::NothingHeld)));
    let columns = ExposureForm { kind: ExposureMethodKind::Columns, factor: "7".into(), ..room.form() };
    assert!(columns.check(&shop, None, Units::US).unwrap_err().fields.contains_key("factor"));
}

#[test]
fn a_deleted_lamp_or_emulsion_leaves_the_lists_and_comes_back() {
    let mut room = ExposureRoom::new();
    room.find(60, &room.form());
    let (bulb, blue) = (room.bulb, room.blue);
    room.press.record(bulb, Fact::Deleted).record(blue, Fact::Deleted);
    let shop = room.press.shop();
    assert!(lamp_list(&shop).is_empty() && emulsion_list(&shop).is_empty());
    room.press.record(bulb, Fact::Restored).record(blue, Fact::Restored);
    let shop = room.press.shop();
    assert_eq!((lamp_list(&shop)[0].exposures, emulsion_list(&shop)[0].exposures), (1, 1));
}

#[test]
fn a_lamp_deleted_before_its_first_fact_arrives_stays_deleted() {
    let mut press = TestShop::new();
    let lamp = press.id();
    let form = LampForm { name: "Bulb".into(), ..LampForm::default() };
    press.record(lamp, Fact::Deleted);
    press.record(lamp, Fact::Stencil(StencilFact::Lamp(form.check(Units::US, None).unwrap())));
    assert!(lamp_list(&press.shop()).is_empty());
}

#[test]
fn an_exposure_that_arrives_before_its_lamp_is_kept_without_a_name() {
    let room = ExposureRoom::new();
    let fact = room.form().check(&room.press.shop(), None, Units::US).unwrap();
    let alone = Entry {
        device: PHONE,
        seq: 1,
        stamp: lastpull_core::journal::Stamp { wall: wall(0), counter: 0 },
        at: wall(0),
        subject: Uuid::from_u128(9),
        fact: Fact::Stencil(fact),
    };
    let mut shop = Shop::default();
    assert!(shop.apply_all(&[alone]));
    let ExposureAnswer::Known(row) = exposure_for(&shop, &room.asked(mesh(156, 64))) else { panic!("lost") };
    assert_eq!((row.lamp.as_str(), row.emulsion.as_str()), ("", ""));
}
