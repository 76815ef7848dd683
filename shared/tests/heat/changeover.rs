//! From one run to the next: when the dryer may be trusted, and how long to wait.

use super::{belt, check, cotton_at_340, cotton_then_polyester, f, over, seconds, settled};
use crate::shop::{HOUR, TestShop, wall};
use lastpull_core::facts::{Fact, RunField};
use lastpull_core::heat::{
    HeatFact, HeatStatus, LimitName, SettledTime, SettlingBasis, TemperatureSource, changeover_between,
    checks_skipped_at_start, settled_facts,
};
use lastpull_core::job::{Fabric, Size};
use lastpull_core::run::{CheckItem, CheckOutcome, Expected, check_list};
use lastpull_core::units::Temperature;

/// 265 °F: an ink maker's bulletin. The dryer brings 330 °F to the print at 340.
#[test]
fn polyester_after_cotton_warns_of_the_hot_dryer_and_how_long_to_wait() {
    let (press, cotton, jerseys, tunnel) = cotton_then_polyester();
    let change = over(&press, jerseys, 180);
    assert_eq!((change.previous, change.dryer), (Some(cotton), Some(tunnel)));
    assert_eq!((change.from_fabric, change.to_fabric), (Some(Fabric::Cotton), Some(Fabric::Polyester)));
    assert_eq!(change.current, Some((f(340.0), TemperatureSource::PreviousRun)));
    let danger: Vec<_> = change.danger.iter().map(|finding| (finding.name, finding.limit)).collect();
    assert_eq!(danger, [(LimitName::DyeMigration, f(265.0)), (LimitName::Scorch, f(300.0))]);
    assert!(change.exceeded_by_set_up.is_empty() && change.hold_ink());
    let steps: Vec<_> = change.steps.iter().map(|row| row.item).collect();
    assert_eq!(steps, [CheckItem::Dryer, CheckItem::Belt], "temperature first: it takes longest");
    let wait = change.wait.unwrap();
    assert_eq!((wait.from, wait.to, wait.basis, wait.cold), (f(340.0), f(260.0), SettlingBasis::OurOwn, false));
    // 44.4 °C down at our own 20 s a degree: 889 s.
    assert_eq!((wait.seconds.seconds().round() as u32, wait.minutes), (889, 15));
    assert!(change.change().unwrap().milli_celsius() < 0);
}

#[test]
fn the_warning_stays_until_the_dryer_is_verified_not_skipped() {
    let (mut press, _, jerseys, _) = cotton_then_polyester();
    check(&mut press, 200, jerseys, CheckItem::Dryer, CheckOutcome::Skipped);
    check(&mut press, 201, jerseys, CheckItem::Belt, CheckOutcome::Ticked);
    assert!(over(&press, jerseys, 210).hold_ink(), "skipped, and the dryer may still be hot");
    let hot = i64::from(f(300.0).milli_celsius());
    check(&mut press, 220, jerseys, CheckItem::Dryer, CheckOutcome::Measured(hot));
    assert!(over(&press, jerseys, 230).hold_ink(), "measured, and too hot");
    check(&mut press, 235, jerseys, CheckItem::Dryer, CheckOutcome::Ticked);
    assert!(over(&press, jerseys, 236).hold_ink(), "the display shows less than was measured");
    let cooled = i64::from(f(258.0).milli_celsius());
    check(&mut press, 240, jerseys, CheckItem::Dryer, CheckOutcome::Measured(cooled));
    let change = over(&press, jerseys, 250);
    assert!(change.verified && !change.hold_ink());
    assert_eq!(change.wait, None);
}

#[test]
fn a_polyester_run_without_a_dryer_setting_is_held_too() {
    let (mut press, _, jerseys, _) = cotton_then_polyester();
    press.set_up(jerseys, vec![RunField::Dryer(None)]);
    let change = over(&press, jerseys, 180);
    assert!(change.setting_missing && !change.danger.is_empty() && change.hold_ink());
    assert_eq!(change.wait, None);
}

#[test]
fn a_set_up_too_hot_is_told_from_a_dryer_not_yet_turned_down() {
    let (mut press, _, jerseys, _) = cotton_then_polyester();
    press.set_up(jerseys, vec![RunField::Dryer(Some(f(340.0)))]);
    check(&mut press, 200, jerseys, CheckItem::Dryer, CheckOutcome::Ticked);
    check(&mut press, 200, jerseys, CheckItem::Belt, CheckOutcome::Ticked);
    let change = over(&press, jerseys, 210);
    let names: Vec<_> = change.exceeded_by_set_up.iter().map(|finding| finding.name).collect();
    assert_eq!(names, [LimitName::DyeMigration, LimitName::Scorch]);
    assert!(change.hold_ink());
}

#[test]
fn cotton_after_cotton_at_the_same_temperature_needs_no_wait() {
    let (mut press, cotton, _) = cotton_at_340();
    let next = press.order("More tees", None, Fabric::Cotton, &[(Size::M, 3)]);
    press.set_up(next, vec![RunField::Dryer(Some(f(340.0))), RunField::Belt(Some(belt(24.0)))]);
    press.pulls(cotton, 0, 40, 3).end_at(120, cotton);
    let change = over(&press, next, 180);
    assert!(change.steps.is_empty() && change.danger.is_empty() && !change.hold_ink());
    assert_eq!((change.wait, change.status()), (None, HeatStatus::Nothing));
}

#[test]
fn in_the_morning_the_dryer_is_cold_but_its_setting_is_still_too_high() {
    let (mut press, _, jerseys, tunnel) = cotton_then_polyester();
    settled(&mut press, tunnel, 70.0, 340.0, 25.0);
    let change = over(&press, jerseys, 24 * HOUR);
    let wait = change.wait.unwrap();
    assert!(wait.cold && !change.danger.is_empty());
    // From 68 °F up at the logged 270 °F in 25 minutes, slower than our own figure, or down at our own 20 s a °C: the longer.
    assert_eq!((wait.from, wait.basis), (Temperature::from_celsius(20.0), SettlingBasis::OneLog));
    assert!(over(&press, jerseys, 180).wait.is_some_and(|wait| !wait.cold));
}

#[test]
fn a_changeover_can_be_computed_between_any_two_runs() {
    let (press, cotton, jerseys, _) = cotton_then_polyester();
    let shop = press.shop();
    let back = changeover_between(&shop, Some(jerseys), cotton, wall(200)).unwrap();
    assert!(back.danger.is_empty() && back.change().unwrap().milli_celsius() > 0);
    // 44.4 °C up at our own 6 s a degree.
    assert_eq!(back.wait.unwrap().seconds.seconds().round() as u32, 267);
    let first = changeover_between(&shop, None, jerseys, wall(200)).unwrap();
    assert_eq!((first.current, first.wait.unwrap().cold), (None, true));
}

#[test]
fn the_most_urgent_warning_comes_first() {
    let (mut press, cotton, jerseys, tunnel) = cotton_then_polyester();
    let call = |press: &TestShop, at| over(press, jerseys, at).status();
    assert_eq!(call(&press, 190), HeatStatus::TooHot);
    assert_eq!(over(&press, jerseys, 190).exceeded_limits().len(), 2);
    press.set_up(jerseys, vec![RunField::Dryer(Some(f(270.0)))]);
    assert_eq!(call(&press, 190), HeatStatus::SetUpTooHot, "270 passes 265, however long one waits");
    assert_eq!(over(&press, jerseys, 190).exceeded_limits().len(), 1);
    press.set_up(jerseys, vec![RunField::Dryer(Some(f(260.0)))]);
    let id = press.id();
    press.record_at(200, id, Fact::Heat(HeatFact::SettlingStarted { dryer: tunnel, from: f(340.0), to: f(260.0) }));
    assert_eq!(call(&press, 201), HeatStatus::TooHot, "on its way is not there");
    assert_eq!(over(&press, jerseys, 201).settling_to_setting().map(|going| going.id), Some(id));
    press.record_at(900, id, Fact::Heat(HeatFact::SettlingFinished(seconds(700.0))));
    assert_eq!((call(&press, 901), over(&press, jerseys, 901).steps_to_do()), (HeatStatus::ChangeFirst, 2));
    check(&mut press, 902, jerseys, CheckItem::Dryer, CheckOutcome::Ticked);
    check(&mut press, 903, jerseys, CheckItem::Belt, CheckOutcome::Ticked);
    assert_eq!((call(&press, 904), over(&press, jerseys, 904).exceeded_limits().len()), (HeatStatus::Verified, 0));
    let shop = press.shop();
    let first = changeover_between(&shop, None, jerseys, wall(30 * HOUR)).unwrap();
    assert_eq!(first.status(), HeatStatus::Nothing, "it was checked");
    let cold = changeover_between(&shop, None, cotton, wall(30 * HOUR)).unwrap();
    assert_eq!((cold.status(), cold.hold_ink()), (HeatStatus::Settle, false), "a cold dryer is no danger");
}

#[test]
fn reading_the_display_does_not_overwrite_a_measurement() {
    let (mut press, _, jerseys, tunnel) = cotton_then_polyester();
    let id = press.id();
    press.record_at(200, id, Fact::Heat(HeatFact::SettlingStarted { dryer: tunnel, from: f(340.0), to: f(260.0) }));
    let exact = i64::from(f(261.0).milli_celsius());
    check(&mut press, 800, jerseys, CheckItem::Dryer, CheckOutcome::Measured(exact));
    let settling = over(&press, jerseys, 810).settling.unwrap();
    assert_eq!(settled_facts(&press.shop(), jerseys, settling, wall(820), SettledTime::Counts, None).len(), 1);
}

#[test]
fn starting_despite_the_warning_records_the_dryer_check_as_skipped() {
    let (mut press, _, jerseys, _) = cotton_then_polyester();
    let noted = |press: &TestShop, at| {
        let list = check_list(&press.shop(), jerseys);
        let change = over(press, jerseys, at);
        checks_skipped_at_start(&list, Some(&change)).into_iter().map(|(item, _)| item).collect::<Vec<_>>()
    };
    let open = check_list(&press.shop(), jerseys).open();
    assert_eq!(noted(&press, 190).len(), open, "each once");
    let hot = i64::from(f(300.0).milli_celsius());
    check(&mut press, 200, jerseys, CheckItem::Dryer, CheckOutcome::Measured(hot));
    assert!(noted(&press, 210).contains(&CheckItem::Dryer), "measured, too hot, and started all the same");
    let cooled = i64::from(f(258.0).milli_celsius());
    check(&mut press, 220, jerseys, CheckItem::Dryer, CheckOutcome::Measured(cooled));
    check(&mut press, 221, jerseys, CheckItem::Belt, CheckOutcome::Ticked);
    assert!(!noted(&press, 230).contains(&CheckItem::Dryer), "nothing holds the ink now");
}

#[test]
fn a_run_without_a_dryer_setting_records_the_temperature_it_started_at() {
    let (mut press, _, jerseys, _) = cotton_then_polyester();
    press.set_up(jerseys, vec![RunField::Dryer(None)]);
    let list = check_list(&press.shop(), jerseys);
    let left = checks_skipped_at_start(&list, Some(&over(&press, jerseys, 180)));
    assert_eq!(left.last(), Some(&(CheckItem::Dryer, Expected::Temperature(f(340.0)))));
    assert_eq!(checks_skipped_at_start(&list, None).len(), list.open());
}

/// A dryer is cold after a night; what it was set to last is all that is known. Three hours: our own.
#[test]
fn what_a_dryer_was_last_used_for_grows_old() {
    let (press, _, jerseys, _) = cotton_then_polyester();
    for (after, cold) in [(180, false), (80 + 3 * HOUR, false), (121 + 3 * HOUR, true), (21 * 24 * HOUR, true)] {
        let change = over(&press, jerseys, after);
        assert_eq!(change.cold, cold, "{after} s");
        assert_eq!(change.last_used, Some(wall(120)), "the end of the run before");
        assert!(change.hold_ink(), "it may still be set too hot when it is switched on");
    }
    let shop = press.shop();
    let first = changeover_between(&shop, None, jerseys, wall(180)).unwrap();
    assert_eq!((first.last_used, first.cold), (None, true));
}

#[test]
fn a_dryer_that_heats_up_is_not_said_to_be_hot_already() {
    let (mut press, cotton, tunnel) = cotton_at_340();
    let id = press.id();
    let start = HeatFact::SettlingStarted { dryer: tunnel, from: f(68.0), to: f(340.0) };
    press.record_at(10, id, Fact::Heat(start));
    assert_eq!(over(&press, cotton, 20).current, Some((f(340.0), TemperatureSource::HeatingUp)));
}
