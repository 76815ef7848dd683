//! Whether an ink cures in the dryer as it is set.

use super::{belt, cotton_at_340, dryer, f, heat, measured, of_run, seconds, sheet};
use crate::shop::{DAY, TestShop, wall};
use lastpull_core::facts::{Fact, RunField};
use lastpull_core::heat::{
    CureEstimate, DryerChoice, HeatCaveat, HeatFact, LimitState, MissingInput, SheetField, run_heat, sheet_for,
};
use lastpull_core::job::{Fabric, Size};
use lastpull_core::units::Units;

#[test]
fn without_sheet_or_measurement_the_cure_lists_what_is_missing() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 3)]);
    let missing = CureEstimate::Unknown(vec![
        MissingInput::Setting,
        MissingInput::Sensor,
        MissingInput::Dwell,
        MissingInput::Sheet,
    ]);
    assert_eq!(of_run(&press, run).cure, missing);
    dryer(&mut press, "Tunnel");
    press.set_up(run, vec![RunField::Dryer(Some(f(340.0))), RunField::Belt(Some(belt(24.0)))]);
    assert_eq!(of_run(&press, run).cure, CureEstimate::Unknown(vec![MissingInput::Sensor, MissingInput::Sheet]));
    let id = press.id();
    heat(&mut press, id, HeatFact::SheetSet(vec![SheetField::Ink("Brick".into())]));
    let found = of_run(&press, run);
    let missing = vec![MissingInput::Sensor, MissingInput::CureTemperature, MissingInput::Hold];
    assert_eq!(found.cure, CureEstimate::Unknown(missing));
    assert!(found.caveats.contains(&HeatCaveat::SensorNotMeasured));
}

#[test]
fn the_inks_temperature_is_the_setting_plus_the_measured_offset() {
    let (press, run, _) = cotton_at_340();
    let found = of_run(&press, run);
    assert!((found.ink_temperature.unwrap().fahrenheit() - 330.0).abs() < 0.01);
    assert!((found.sensor.unwrap().offset.in_units(Units::US) + 10.0).abs() < 0.01);
    assert_eq!(found.dwell.from_belt, Some(seconds(90.0)));
    assert_eq!(found.dryer.unwrap().choice, DryerChoice::Only);
}

#[test]
fn a_dryer_that_reads_hot_does_not_cure_at_its_setting() {
    let (mut press, run, tunnel) = cotton_at_340();
    sheet(&mut press, 320.0, 90.0);
    assert_eq!(of_run(&press, run).cure, CureEstimate::Reached { spare: seconds(0.0) });
    measured(&mut press, tunnel, 340.0, 311.0);
    let CureEstimate::TooCool(short) = of_run(&press, run).cure else { panic!() };
    assert!((short.in_units(Units::US) - 9.0).abs() < 0.01);
    heat(&mut press, tunnel, HeatFact::SensorUnread);
    assert!(matches!(of_run(&press, run).cure, CureEstimate::Reached { .. }), "taken back");
}

#[test]
fn too_short_a_dwell_suggests_passes_and_a_belt_speed_that_suffice() {
    let (mut press, run, _) = cotton_at_340();
    sheet(&mut press, 320.0, 150.0);
    let found = of_run(&press, run);
    let CureEstimate::TooShort { has, needs, passes, belt } = found.cure else { panic!("{:?}", found.cure) };
    assert_eq!((has, needs, passes, found.passes_needed), (seconds(90.0), seconds(150.0), 2, Some(2)));
    assert!((belt.unwrap().inches_per_minute() - 14.4).abs() < 0.01);
    press.set_up(run, vec![RunField::Passes(2)]);
    let found = of_run(&press, run);
    assert_eq!(found.cure, CureEstimate::Reached { spare: seconds(30.0) });
    assert!(found.caveats.contains(&HeatCaveat::PassesMayNotAdd));
}

#[test]
fn a_belt_speed_the_dryer_cannot_run_is_not_suggested() {
    let (mut press, run, _) = cotton_at_340();
    sheet(&mut press, 320.0, 400.0);
    let CureEstimate::TooShort { belt: advice, .. } = of_run(&press, run).cure else { panic!() };
    assert_eq!(advice, None, "5.4 inches a minute, but it starts at 10");
    press.set_up(run, vec![RunField::Belt(Some(belt(61.0)))]);
    assert_eq!(of_run(&press, run).belt_beyond, Some(belt(61.0)));
}

#[test]
fn every_view_says_that_the_wash_test_decides() {
    let (mut press, run, _) = cotton_at_340();
    sheet(&mut press, 320.0, 90.0);
    assert_eq!(of_run(&press, run).caveats, [HeatCaveat::WashTestDecides, HeatCaveat::HeatUpCounted]);
}

#[test]
fn the_cure_estimate_uses_the_shorter_of_two_dwells() {
    let (mut press, run, _) = cotton_at_340();
    sheet(&mut press, 320.0, 90.0);
    press.set_up(run, vec![RunField::Dwell(Some(seconds(80.0)))]);
    let found = of_run(&press, run);
    assert!(found.dwell.differ && matches!(found.cure, CureEstimate::TooShort { .. }));
    press.set_up(run, vec![RunField::Dwell(Some(seconds(100.0)))]);
    assert_eq!(of_run(&press, run).dwell.used(), Some(seconds(90.0)));
}

#[test]
fn a_sheet_is_found_whatever_the_case_and_spaces_and_the_latest_counts() {
    let (mut press, _, _) = cotton_at_340();
    let old = sheet(&mut press, 320.0, 90.0);
    let ask = |press: &TestShop, ink| sheet_for(&press.shop(), ink).map(|(id, _)| id);
    assert_eq!(ask(&press, " b r ick "), Some(old));
    assert_eq!((ask(&press, "Brick 2"), ask(&press, "")), (None, None));
    let id = press.id();
    press.record_at(5, id, Fact::Heat(HeatFact::SheetSet(vec![SheetField::Ink("Brick".into())])));
    assert_eq!(ask(&press, "brick"), Some(id));
    press.record(id, Fact::Deleted);
    assert_eq!(ask(&press, "brick"), Some(old));
    press.record(id, Fact::Restored);
    assert_eq!(ask(&press, "brick"), Some(id));
}

#[test]
fn an_old_measurement_or_one_far_from_the_setting_is_not_used_for_a_limit() {
    let (mut press, first, tunnel) = cotton_at_340();
    let run = press.order("Jerseys", None, Fabric::Polyester, &[(Size::M, 3)]);
    press.set_up(run, vec![RunField::Dryer(Some(f(270.0)))]);
    measured(&mut press, tunnel, 270.0, 255.0);
    let state = |press: &TestShop, now| run_heat(&press.shop(), run, now).unwrap().limits[0].state;
    assert_eq!(state(&press, wall(0)), LimitState::Clear, "255 at the print");
    assert_eq!(state(&press, wall(91 * DAY)), LimitState::Exceeded, "270 again, since the probe is long ago");
    heat(&mut press, tunnel, HeatFact::SensorUnread);
    measured(&mut press, tunnel, 340.0, 300.0);
    assert_eq!(state(&press, wall(0)), LimitState::Exceeded, "measured 70 degrees away");
    let far = run_heat(&press.shop(), run, wall(0)).unwrap();
    assert!(far.caveats.contains(&HeatCaveat::SensorFarFromSetting));
    assert!(!run_heat(&press.shop(), first, wall(0)).unwrap().caveats.contains(&HeatCaveat::SensorFarFromSetting));
}
