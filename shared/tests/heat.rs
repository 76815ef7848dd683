//! What heat does to a run: dwell, cure on paper, limits of the fabric; and the changeover.

use crate::shop::{DAY, HOUR, Press, wall};
use lastpull_core::facts::{Fact, RunField};
use lastpull_core::heat::{
    Changeover, CureEstimate, Direction, DryerChoice, HeatCaveat, HeatFact, HeatStatus, HeaterField, HeaterKind,
    LimitKind, LimitName, LimitOrigin, LimitState, MissingInput, RunHeat, SensorMethod, SettlingBasis, SheetField,
    TemperatureSource, changeover, changeover_between, checks_skipped_at_start, dwell, fabric_limit, fabric_limits,
    fastest_belt, heater_list, passes_for, run_heat, settled_facts, settling_log, settling_pace, sheet_for,
};
use lastpull_core::ids::RunId;
use lastpull_core::job::{Fabric, Size};
use lastpull_core::run::{CheckItem, CheckOutcome, Expected, Flash, check_list};
use lastpull_core::shop::Shop;
use lastpull_core::units::{BeltSpeed, Length, Seconds, Temperature, Units};
use proptest::prelude::*;
use uuid::Uuid;

fn f(degrees: f64) -> Temperature {
    Temperature::from_fahrenheit(degrees)
}

fn seconds(seconds: f64) -> Seconds {
    Seconds::new(seconds)
}

fn belt(inches_a_minute: f64) -> BeltSpeed {
    BeltSpeed::from_units(inches_a_minute, Units::UsCustomary)
}

fn heat(press: &mut Press, subject: Uuid, fact: HeatFact) {
    press.say(subject, Fact::Heat(fact));
}

/// A dryer with 36 inches under heat, its belt from 10 to 60 inches a minute.
fn dryer(press: &mut Press, name: &str) -> Uuid {
    let id = press.id();
    let fields = vec![
        HeaterField::Kind(HeaterKind::Dryer),
        HeaterField::Name(name.into()),
        HeaterField::HeatedLength(Some(Length::from_inches(36.0))),
        HeaterField::Slowest(Some(belt(10.0))),
        HeaterField::Fastest(Some(belt(60.0))),
    ];
    heat(press, id, HeatFact::HeaterSet(fields));
    id
}

fn measured(press: &mut Press, dryer: Uuid, setting: f64, found: f64) {
    let fact = HeatFact::SensorRead { setting: f(setting), found: f(found), method: SensorMethod::Probe };
    heat(press, dryer, fact);
}

/// A sheet for "Brick", the ink of every run here: 320 °F held for so many seconds.
fn sheet(press: &mut Press, cure: f64, hold: f64) -> Uuid {
    let id = press.id();
    let fields = vec![
        SheetField::Ink("BRICK".into()),
        SheetField::Cure(Some(f(cure))),
        SheetField::Hold(Some(seconds(hold))),
        SheetField::Highest(Some(f(350.0))),
    ];
    heat(press, id, HeatFact::SheetSet(fields));
    id
}

fn of_run(press: &Press, run: RunId) -> RunHeat {
    run_heat(&press.shop(), run, wall(0)).unwrap()
}

/// A cotton run at 340 °F and 24 inches a minute through a dryer that brings 330 °F to the print.
fn cotton_at_340() -> (Press, RunId, Uuid) {
    let (mut press, run) = Press::with_run(&[(Size::M, 3)]);
    let tunnel = dryer(&mut press, "Tunnel");
    measured(&mut press, tunnel, 340.0, 330.0);
    press.set_up(run, vec![RunField::Dryer(Some(f(340.0))), RunField::Belt(Some(belt(24.0)))]);
    (press, run, tunnel)
}

/// Source: `cure_dwell_checks.csv`. A belt is stored to a millionth of a metre a second.
#[test]
fn dwell_and_fastest_belt_are_those_of_the_check_values() {
    let mut read = 0;
    for row in include_str!("data/cure_dwell_checks.csv").lines().skip(1) {
        let cells: Vec<f64> = row.split(',').take(5).map(|cell| cell.parse().unwrap()).collect();
        let [length, speed, expected, needed, fastest] = cells[..] else { panic!("{row}") };
        let heated = Length::from_inches(length);
        let found = dwell(heated, belt(speed)).unwrap();
        assert!((found.seconds() - expected).abs() < 0.02, "{row}: {found:?}");
        let slow_enough = fastest_belt(heated, seconds(needed)).unwrap();
        assert!((slow_enough.in_units(Units::UsCustomary) - fastest).abs() < 0.005, "{row}: {slow_enough:?}");
        assert_eq!(passes_for(seconds(needed), found).unwrap() > 1, expected < needed, "{row}");
        read += 1;
    }
    assert_eq!(read, 5);
}

#[test]
fn a_belt_that_stands_and_a_tunnel_without_length_have_no_dwell() {
    assert_eq!(dwell(Length::from_inches(36.0), BeltSpeed::from_micrometres_a_second(0)), None);
    assert_eq!(dwell(Length::from_inches(0.0), belt(24.0)), None);
    assert_eq!(dwell(Length::from_micrometres(-5), belt(24.0)), None);
    assert_eq!(dwell(Length::from_micrometres(i32::MAX), BeltSpeed::from_micrometres_a_second(1)), None);
    assert_eq!(fastest_belt(Length::from_inches(36.0), seconds(0.0)), None);
    assert_eq!(passes_for(seconds(90.0), seconds(0.0)), None);
}

proptest! {
    #[test]
    fn the_fastest_belt_holds_long_enough_and_one_a_little_faster_does_not(
        inches in 5.0..200.0f64, hold in 5.0..600.0f64,
    ) {
        let heated = Length::from_inches(inches);
        let speed = fastest_belt(heated, seconds(hold)).unwrap();
        prop_assert!(dwell(heated, speed).unwrap() >= seconds(hold));
        let faster = BeltSpeed::from_micrometres_a_second(speed.micrometres_per_second() * 101 / 100 + 2);
        prop_assert!(dwell(heated, faster).unwrap() < seconds(hold));
    }

    #[test]
    fn the_passes_add_up_to_the_hold_and_one_less_does_not(hold in 1_000u32..900_000, pass in 1_000u32..400_000) {
        let (hold_time, pass_time) = (Seconds::from_milliseconds(hold), Seconds::from_milliseconds(pass));
        let passes = passes_for(hold_time, pass_time).unwrap();
        // A thousandth short is the rounding of a stored belt.
        prop_assert!(u64::from(passes) * u64::from(pass) * 1000 >= u64::from(hold) * 999 - 1000);
        prop_assert!(passes == 1 || u64::from(passes - 1) * u64::from(pass) < u64::from(hold));
    }
}

#[test]
fn without_sheet_and_measurement_the_cure_is_unknown_and_says_what_is_missing() {
    let (mut press, run) = Press::with_run(&[(Size::M, 3)]);
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
fn the_inks_temperature_is_the_setting_and_the_measured_error() {
    let (press, run, _) = cotton_at_340();
    let found = of_run(&press, run);
    assert!((found.ink_temperature.unwrap().fahrenheit() - 330.0).abs() < 0.01);
    assert!((found.sensor.unwrap().offset.in_units(Units::UsCustomary) + 10.0).abs() < 0.01);
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
    assert!((short.in_units(Units::UsCustomary) - 9.0).abs() < 0.01);
    heat(&mut press, tunnel, HeatFact::SensorUnread);
    assert!(matches!(of_run(&press, run).cure, CureEstimate::Reached { .. }), "taken back");
}

#[test]
fn too_short_a_pass_names_the_passes_and_the_belt_that_would_do() {
    let (mut press, run, _) = cotton_at_340();
    sheet(&mut press, 320.0, 150.0);
    let found = of_run(&press, run);
    let CureEstimate::TooShort { has, needs, passes, belt } = found.cure else { panic!("{:?}", found.cure) };
    assert_eq!((has, needs, passes, found.passes_needed), (seconds(90.0), seconds(150.0), 2, Some(2)));
    assert!((belt.unwrap().in_units(Units::UsCustomary) - 14.4).abs() < 0.01);
    press.set_up(run, vec![RunField::Passes(2)]);
    let found = of_run(&press, run);
    assert_eq!(found.cure, CureEstimate::Reached { spare: seconds(30.0) });
    assert!(found.caveats.contains(&HeatCaveat::PassesMayNotAdd));
}

#[test]
fn a_belt_the_dryer_does_not_run_is_no_advice() {
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
fn a_cure_does_not_rest_on_the_longer_of_two_dwells() {
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
    let ask = |press: &Press, ink| sheet_for(&press.shop(), ink).map(|(id, _)| id);
    assert_eq!(ask(&press, " b r ick "), Some(old));
    assert_eq!((ask(&press, "Brick 2"), ask(&press, "")), (None, None));
    let id = press.id();
    press.say_at(5, id, Fact::Heat(HeatFact::SheetSet(vec![SheetField::Ink("Brick".into())])));
    assert_eq!(ask(&press, "brick"), Some(id));
    press.say(id, Fact::Deleted);
    assert_eq!(ask(&press, "brick"), Some(old));
    press.say(id, Fact::Restored);
    assert_eq!(ask(&press, "brick"), Some(id));
}

#[test]
fn a_measurement_long_ago_or_far_from_the_setting_is_not_relied_on_for_a_limit() {
    let (mut press, first, tunnel) = cotton_at_340();
    let run = press.order("Jerseys", None, Fabric::Polyester, &[(Size::M, 3)]);
    press.set_up(run, vec![RunField::Dryer(Some(f(270.0)))]);
    measured(&mut press, tunnel, 270.0, 255.0);
    let state = |press: &Press, now| run_heat(&press.shop(), run, now).unwrap().limits[0].state;
    assert_eq!(state(&press, wall(0)), LimitState::Clear, "255 at the print");
    assert_eq!(state(&press, wall(91 * DAY)), LimitState::Exceeded, "270 again, since the probe is long ago");
    measured(&mut press, tunnel, 340.0, 300.0);
    assert_eq!(state(&press, wall(0)), LimitState::Exceeded, "measured 70 degrees away");
    let far = run_heat(&press.shop(), run, wall(0)).unwrap();
    assert!(far.caveats.contains(&HeatCaveat::SensorFarFromSetting));
    assert!(!run_heat(&press.shop(), first, wall(0)).unwrap().caveats.contains(&HeatCaveat::SensorFarFromSetting));
}

/// 265 °F and 280 °F: an ink maker's bulletin, and a trade magazine's glossary, both opened
/// (`cure_common_practice.csv`). Of two published figures the lower is the default.
#[test]
fn each_default_is_an_opened_figure_or_says_that_it_has_no_source() {
    let table = include_str!("data/cure_common_practice.csv");
    let opened = |what: &str, degrees: &str| {
        table.lines().any(|row| row.starts_with(what) && row.contains(degrees) && row.contains(",opened,"))
    };
    assert!(opened("polyester: disperse dye starts to move", ",265,"));
    assert!(opened("polyester: dye migration", ",280,"));
    assert!(opened("synthetics: choose an ink curing at or below", ",300,"));
    for limit in fabric_limits(&Shop::default()) {
        let degrees = limit.temperature.fahrenheit().round();
        match limit.origin {
            LimitOrigin::MakersBulletin => assert!((degrees - 265.0).abs() < 0.1),
            LimitOrigin::DistributorsPage => assert!((degrees - 300.0).abs() < 0.1),
            LimitOrigin::CommonPractice => {
                assert!(matches!(limit.fabric, Fabric::Cotton | Fabric::Canvas));
            }
            LimitOrigin::OurOwn => assert!(degrees <= 300.0, "the most cautious stands in"),
            other => panic!("{other:?} is no default"),
        }
        let second = limit.also_published.map(|(t, origin)| (t.fahrenheit().round() as i32, origin));
        let conflict = limit.origin == LimitOrigin::MakersBulletin;
        assert_eq!(second, conflict.then_some((280, LimitOrigin::TradeGlossary)));
    }
    assert_eq!(fabric_limit(&Shop::default(), Fabric::Cotton, LimitKind::DyeMigration), None);
}

#[test]
fn the_shops_own_limit_wins_is_said_to_be_raised_and_goes_away_again() {
    let (mut press, _) = Press::with_run(&[(Size::M, 1)]);
    let kind = LimitKind::DyeMigration;
    let set = |press: &mut Press, temperature| {
        let note = "blocker under the ink".to_string();
        heat(press, Uuid::nil(), HeatFact::FabricLimit { fabric: Fabric::Polyester, kind, temperature, note });
    };
    set(&mut press, Some(f(280.0)));
    let limit = fabric_limit(&press.shop(), Fabric::Polyester, kind).unwrap();
    assert_eq!(
        (limit.origin, limit.is_raised(), limit.note.as_str()),
        (LimitOrigin::Shop, true, "blocker under the ink")
    );
    assert_eq!(limit.instead_of, Some((f(265.0), LimitOrigin::MakersBulletin)));
    set(&mut press, Some(f(250.0)));
    assert!(!fabric_limit(&press.shop(), Fabric::Polyester, kind).unwrap().is_raised());
    set(&mut press, None);
    assert_eq!(fabric_limit(&press.shop(), Fabric::Polyester, kind).unwrap().origin, LimitOrigin::MakersBulletin);
}

#[test]
fn an_ink_that_cures_above_what_the_fabric_bears_is_a_conflict_no_setting_solves() {
    let mut press = Press::new();
    let run = press.order("Jerseys", None, Fabric::Polyester, &[(Size::M, 3)]);
    sheet(&mut press, 320.0, 90.0);
    let conflict = of_run(&press, run).conflict.unwrap();
    assert_eq!((conflict.cure, conflict.limit.name), (f(320.0), LimitName::DyeMigration));
    sheet(&mut press, 260.0, 90.0);
    assert_eq!(of_run(&press, run).conflict, None);
}

#[test]
fn the_highest_temperature_of_the_ink_is_a_limit_too() {
    let (mut press, run, tunnel) = cotton_at_340();
    sheet(&mut press, 320.0, 90.0);
    measured(&mut press, tunnel, 340.0, 350.0);
    let passed: Vec<_> = of_run(&press, run).exceeded_limits().map(|finding| (finding.name, finding.origin)).collect();
    assert_eq!(passed, [(LimitName::InkHighest, LimitOrigin::InkSheet)]);
}

#[test]
fn a_flash_over_polyester_is_warned_of() {
    let mut press = Press::new();
    let run = press.order("Jerseys", None, Fabric::Polyester, &[(Size::M, 3)]);
    press.set_up(run, vec![RunField::Flash(Some(Flash { seconds: seconds(7.0), distance: None }))]);
    assert!(of_run(&press, run).caveats.contains(&HeatCaveat::FlashHeatsToo));
}

#[test]
fn of_several_dryers_the_chosen_one_counts_and_a_deleted_one_does_not() {
    let (mut press, run, tunnel) = cotton_at_340();
    let small = dryer(&mut press, "Small");
    let used = |press: &Press| of_run(press, run).dryer.map(|used| (used.id, used.choice)).unwrap();
    assert_eq!(used(&press), (tunnel, DryerChoice::Assumed));
    heat(&mut press, run, HeatFact::DryerChosen(Some(small)));
    assert_eq!(used(&press), (small, DryerChoice::Chosen));
    press.say(small, Fact::Deleted);
    assert_eq!(used(&press), (tunnel, DryerChoice::Only));
    press.say(small, Fact::Restored);
    assert_eq!(used(&press), (small, DryerChoice::Chosen));
    heat(&mut press, run, HeatFact::DryerChosen(None));
    assert_eq!(used(&press), (tunnel, DryerChoice::Assumed));
}

#[test]
fn a_flash_unit_is_no_dryer() {
    let (mut press, run) = Press::with_run(&[(Size::M, 1)]);
    let id = press.id();
    let fields = vec![HeaterField::Kind(HeaterKind::Flash), HeaterField::Name("Flash".into())];
    heat(&mut press, id, HeatFact::HeaterSet(fields));
    assert_eq!(of_run(&press, run).dryer, None);
}

#[test]
fn a_dryer_deleted_before_its_first_fact_arrived_stays_deleted() {
    let (mut press, run) = Press::with_run(&[(Size::M, 1)]);
    let id = Uuid::from_u128(0xd0);
    press.say(id, Fact::Deleted);
    heat(&mut press, id, HeatFact::HeaterSet(vec![HeaterField::Name("Tunnel".into())]));
    assert_eq!(of_run(&press, run).dryer, None);
    press.say(id, Fact::Restored);
    assert_eq!(of_run(&press, run).dryer.unwrap().name, "Tunnel");
}

/// Cotton at 340 °F was printed until 8:02; polyester at 260 °F comes next.
fn cotton_then_polyester() -> (Press, RunId, RunId, Uuid) {
    let (mut press, cotton, tunnel) = cotton_at_340();
    let jerseys = press.order("Jerseys", None, Fabric::Polyester, &[(Size::M, 3)]);
    press.set_up(jerseys, vec![RunField::Belt(Some(belt(20.0))), RunField::Dryer(Some(f(260.0)))]);
    press.pulls(cotton, 0, 40, 3).end_at(120, cotton);
    (press, cotton, jerseys, tunnel)
}

fn over(press: &Press, run: RunId, seconds: u64) -> Changeover {
    changeover(&press.shop(), run, wall(seconds)).unwrap()
}

/// A settling in the log of a dryer: from, to, minutes. Told afterwards.
fn settled(press: &mut Press, dryer: Uuid, from: f64, to: f64, minutes: f64) -> Uuid {
    let id = press.id();
    let took = seconds(minutes * 60.0);
    heat(press, id, HeatFact::SettlingLogged { dryer, from: f(from), to: f(to), took });
    id
}

fn check(press: &mut Press, at: u64, run: RunId, item: CheckItem, outcome: CheckOutcome) {
    let expected = check_list(&press.shop(), run).rows().find(|row| row.item == item).unwrap().expected.clone();
    press.say_at(at, run, Fact::CheckMade { item, expected, outcome, by: None });
}

/// 265 °F: an ink maker's bulletin. The dryer brings 330 °F to the print at 340.
#[test]
fn cotton_then_polyester_names_the_limit_the_hot_dryer_would_pass_and_how_long_to_wait() {
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
fn it_stays_until_the_dryer_was_seen_to_and_skipping_does_not_do() {
    let (mut press, _, jerseys, _) = cotton_then_polyester();
    check(&mut press, 200, jerseys, CheckItem::Dryer, CheckOutcome::Skipped);
    check(&mut press, 201, jerseys, CheckItem::Belt, CheckOutcome::Ticked);
    assert!(over(&press, jerseys, 210).hold_ink(), "skipped, and the dryer may still be hot");
    let hot = i64::from(f(300.0).milli_celsius());
    check(&mut press, 220, jerseys, CheckItem::Dryer, CheckOutcome::Measured(hot));
    assert!(over(&press, jerseys, 230).hold_ink(), "measured, and too hot");
    check(&mut press, 240, jerseys, CheckItem::Dryer, CheckOutcome::Ticked);
    let change = over(&press, jerseys, 250);
    assert!(change.verified && !change.hold_ink());
    assert_eq!(change.wait, None);
}

#[test]
fn a_polyester_run_that_says_nothing_of_its_dryer_is_held_all_the_same() {
    let (mut press, _, jerseys, _) = cotton_then_polyester();
    press.set_up(jerseys, vec![RunField::Dryer(None)]);
    let change = over(&press, jerseys, 180);
    assert!(change.setting_missing && !change.danger.is_empty() && change.hold_ink());
    assert_eq!(change.wait, None);
}

#[test]
fn a_set_up_that_is_itself_too_hot_is_told_apart_from_a_dryer_not_yet_turned_down() {
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
fn cotton_after_cotton_at_the_same_heat_has_nothing_to_wait_for() {
    let (mut press, cotton, _) = cotton_at_340();
    let next = press.order("More tees", None, Fabric::Cotton, &[(Size::M, 3)]);
    press.set_up(next, vec![RunField::Dryer(Some(f(340.0))), RunField::Belt(Some(belt(24.0)))]);
    press.pulls(cotton, 0, 40, 3).end_at(120, cotton);
    let change = over(&press, next, 180);
    assert!(change.steps.is_empty() && change.danger.is_empty() && !change.hold_ink());
    assert_eq!((change.wait, change.status()), (None, HeatStatus::Nothing));
}

#[test]
fn in_the_morning_the_dryer_is_cold_but_its_dial_still_stands_too_high() {
    let (mut press, _, jerseys, tunnel) = cotton_then_polyester();
    settled(&mut press, tunnel, 70.0, 340.0, 25.0);
    let change = over(&press, jerseys, 24 * HOUR);
    let wait = change.wait.unwrap();
    assert!(wait.cold && !change.danger.is_empty());
    // From 68 °F up at the logged 270 °F in 25 minutes, or down at our own 20 s a °C: the longer.
    assert_eq!((wait.from, wait.basis), (Temperature::from_celsius(20.0), SettlingBasis::Logged(1)));
    assert!(over(&press, jerseys, 180).wait.is_some_and(|wait| !wait.cold));
}

#[test]
fn the_wait_is_learned_from_the_shops_own_logs_heating_and_cooling_apart() {
    let (mut press, _, jerseys, tunnel) = cotton_then_polyester();
    let other = dryer(&mut press, "Small");
    settled(&mut press, other, 340.0, 260.0, 60.0);
    settled(&mut press, tunnel, 260.0, 340.0, 4.0);
    let pace = |press: &Press, direction| settling_pace(&press.shop(), tunnel, direction);
    assert_eq!(pace(&press, Direction::Down).basis, SettlingBasis::OurOwn);
    let up = pace(&press, Direction::Up);
    assert!((up.seconds_per_degree - 240.0 / (80.0 / 1.8)).abs() < 0.01);
    for minutes in [8.0, 10.0, 200.0] {
        settled(&mut press, tunnel, 340.0, 260.0, minutes);
    }
    let down = pace(&press, Direction::Down);
    assert_eq!(down.basis, SettlingBasis::Logged(3));
    assert!((down.seconds_per_degree - 600.0 / (80.0 / 1.8)).abs() < 0.01, "the forgotten one moves nothing");
    assert_eq!(pace(&press, Direction::Up), up);
    let change = over(&press, jerseys, 180);
    assert_eq!(change.wait.map(|wait| (wait.minutes, wait.basis)), Some((10, SettlingBasis::Logged(3))));
    assert_eq!(
        change.current,
        Some((f(340.0), TemperatureSource::PreviousRun)),
        "a log told afterwards cools no dryer"
    );
    assert!(!change.danger.is_empty());
}

#[test]
fn a_day_is_planned_between_any_two_runs() {
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
fn of_two_logs_the_slower_one_counts_and_a_deleted_log_does_not() {
    let (mut press, _, _, tunnel) = cotton_then_polyester();
    settled(&mut press, tunnel, 340.0, 260.0, 8.0);
    let slow = settled(&mut press, tunnel, 340.0, 260.0, 12.0);
    let minutes =
        |press: &Press| settling_pace(&press.shop(), tunnel, Direction::Down).seconds_per_degree * 80.0 / 108.0;
    assert!((minutes(&press) - 12.0).abs() < 0.01);
    press.say(slow, Fact::Deleted);
    assert!((minutes(&press) - 8.0).abs() < 0.01);
}

#[test]
fn a_dryer_on_its_way_counts_down_and_is_hot_until_it_has_settled() {
    let (mut press, _, jerseys, tunnel) = cotton_then_polyester();
    let id = press.id();
    let started = HeatFact::SettlingStarted { dryer: tunnel, from: f(340.0), to: f(260.0) };
    press.say_at(200, id, Fact::Heat(started));
    let change = over(&press, jerseys, 500);
    assert_eq!(change.current, Some((f(340.0), TemperatureSource::Settling)));
    let settling = change.settling.unwrap();
    assert_eq!((settling.id, settling.elapsed), (id, seconds(300.0)));
    assert_eq!((settling.left.seconds().round() as u32, settling.to), (589, f(260.0)));
    let later = settling.at(wall(620));
    assert_eq!((later.elapsed, later.left.seconds().round() as u32), (seconds(420.0), 469));
    assert_eq!(settling.at(wall(9_000)).left, seconds(0.0), "it should have settled");
    assert_eq!(change.wait.unwrap().minutes, 10);
    assert!(change.hold_ink() && !change.danger.is_empty());
    press.say_at(900, id, Fact::Heat(HeatFact::SettlingFinished(seconds(700.0))));
    let change = over(&press, jerseys, 901);
    assert_eq!(
        (change.current, change.settling, change.wait),
        (Some((f(260.0), TemperatureSource::Settled)), None, None)
    );
    assert!(change.danger.is_empty());
    assert!(change.hold_ink(), "the checks of dryer and belt are still to make");
}

#[test]
fn saying_that_the_dryer_has_settled_checks_it_where_it_went_to_what_the_run_asks_for() {
    let (mut press, _, jerseys, tunnel) = cotton_then_polyester();
    let going = |press: &mut Press, at, to| {
        let id = press.id();
        press.say_at(at, id, Fact::Heat(HeatFact::SettlingStarted { dryer: tunnel, from: f(340.0), to: f(to) }));
        over(press, jerseys, at).settling.unwrap()
    };
    let elsewhere = going(&mut press, 200, 300.0);
    let said = settled_facts(&press.shop(), jerseys, elsewhere, wall(800), None);
    assert_eq!(said, [(elsewhere.id, Fact::Heat(HeatFact::SettlingFinished(seconds(600.0))))]);
    let there = going(&mut press, 210, 260.0);
    for (subject, fact) in settled_facts(&press.shop(), jerseys, there, wall(900), Some("Ines".into())) {
        press.say_at(900, subject, fact);
    }
    check(&mut press, 910, jerseys, CheckItem::Belt, CheckOutcome::Ticked);
    let change = over(&press, jerseys, 920);
    assert!(change.verified && change.danger.is_empty() && !change.hold_ink());
    assert_eq!(press.shop().heat.settlings().find(|(id, _)| *id == there.id).unwrap().1.took, Some(seconds(690.0)));
}

#[test]
fn what_is_most_urgent_is_called_first() {
    let (mut press, cotton, jerseys, tunnel) = cotton_then_polyester();
    let call = |press: &Press, at| over(press, jerseys, at).status();
    assert_eq!(call(&press, 190), HeatStatus::TooHot);
    assert_eq!(over(&press, jerseys, 190).exceeded_limits().len(), 2);
    press.set_up(jerseys, vec![RunField::Dryer(Some(f(270.0)))]);
    assert_eq!(call(&press, 190), HeatStatus::SetUpTooHot, "270 passes 265, however long one waits");
    assert_eq!(over(&press, jerseys, 190).exceeded_limits().len(), 1);
    press.set_up(jerseys, vec![RunField::Dryer(Some(f(260.0)))]);
    let id = press.id();
    press.say_at(200, id, Fact::Heat(HeatFact::SettlingStarted { dryer: tunnel, from: f(340.0), to: f(260.0) }));
    assert_eq!(call(&press, 201), HeatStatus::TooHot, "on its way is not there");
    assert_eq!(over(&press, jerseys, 201).settling_to_setting().map(|going| going.id), Some(id));
    press.say_at(900, id, Fact::Heat(HeatFact::SettlingFinished(seconds(700.0))));
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
fn a_settling_to_somewhere_else_is_not_this_runs() {
    let (mut press, _, jerseys, tunnel) = cotton_then_polyester();
    let id = press.id();
    press.say_at(200, id, Fact::Heat(HeatFact::SettlingStarted { dryer: tunnel, from: f(340.0), to: f(300.0) }));
    let change = over(&press, jerseys, 210);
    assert!(change.settling.is_some() && change.settling_to_setting().is_none() && change.wait.is_some());
}

#[test]
fn a_measured_dryer_is_not_overwritten_by_a_look_at_its_display() {
    let (mut press, _, jerseys, tunnel) = cotton_then_polyester();
    let id = press.id();
    press.say_at(200, id, Fact::Heat(HeatFact::SettlingStarted { dryer: tunnel, from: f(340.0), to: f(260.0) }));
    let exact = i64::from(f(261.0).milli_celsius());
    check(&mut press, 800, jerseys, CheckItem::Dryer, CheckOutcome::Measured(exact));
    let settling = over(&press, jerseys, 810).settling.unwrap();
    assert_eq!(settled_facts(&press.shop(), jerseys, settling, wall(820), None).len(), 1);
}

#[test]
fn starting_over_a_hold_notes_the_dryer_as_skipped_whatever_was_said_of_it() {
    let (mut press, _, jerseys, _) = cotton_then_polyester();
    let noted = |press: &Press, at| {
        let list = check_list(&press.shop(), jerseys);
        let change = over(press, jerseys, at);
        checks_skipped_at_start(&list, Some(&change)).into_iter().map(|(item, _)| item).collect::<Vec<_>>()
    };
    let open = check_list(&press.shop(), jerseys).open();
    assert_eq!(noted(&press, 190).len(), open, "each once");
    let hot = i64::from(f(300.0).milli_celsius());
    check(&mut press, 200, jerseys, CheckItem::Dryer, CheckOutcome::Measured(hot));
    assert!(noted(&press, 210).contains(&CheckItem::Dryer), "measured, too hot, and started all the same");
    check(&mut press, 220, jerseys, CheckItem::Dryer, CheckOutcome::Ticked);
    check(&mut press, 221, jerseys, CheckItem::Belt, CheckOutcome::Ticked);
    assert!(!noted(&press, 230).contains(&CheckItem::Dryer), "nothing holds the ink now");
}

#[test]
fn a_run_without_a_dryer_setting_notes_the_heat_it_was_started_at() {
    let (mut press, _, jerseys, _) = cotton_then_polyester();
    press.set_up(jerseys, vec![RunField::Dryer(None)]);
    let list = check_list(&press.shop(), jerseys);
    let left = checks_skipped_at_start(&list, Some(&over(&press, jerseys, 180)));
    assert_eq!(left.last(), Some(&(CheckItem::Dryer, Expected::Temperature(f(340.0)))));
    assert_eq!(checks_skipped_at_start(&list, None).len(), list.open());
}

#[test]
fn units_are_listed_dryers_first_and_settlings_newest_first() {
    let (mut press, _, _, tunnel) = cotton_then_polyester();
    let flash = press.id();
    let fields = vec![HeaterField::Kind(HeaterKind::Flash), HeaterField::Name("Flash".into())];
    press.say_at(200, flash, Fact::Heat(HeatFact::HeaterSet(fields)));
    let second = dryer(&mut press, "Small");
    let listed = |press: &Press| heater_list(&press.shop()).iter().map(|(id, _)| *id).collect::<Vec<_>>();
    assert_eq!(listed(&press), [tunnel, second, flash]);
    press.say(tunnel, Fact::Deleted);
    assert_eq!(listed(&press), [second, flash]);
    let first = settled(&mut press, second, 340.0, 260.0, 8.0);
    let last = press.id();
    press.say_at(210, last, Fact::Heat(HeatFact::SettlingStarted { dryer: second, from: f(260.0), to: f(340.0) }));
    let log: Vec<Uuid> = settling_log(&press.shop()).iter().map(|(id, _)| *id).collect();
    assert_eq!(log, [last, first]);
}

#[test]
fn a_settling_that_ended_before_its_start_arrived_waits_for_it() {
    let (mut press, _, _, tunnel) = cotton_then_polyester();
    let id = press.id();
    heat(&mut press, id, HeatFact::SettlingFinished(seconds(600.0)));
    let basis = |press: &Press| settling_pace(&press.shop(), tunnel, Direction::Down).basis;
    assert_eq!(basis(&press), SettlingBasis::OurOwn);
    heat(&mut press, id, HeatFact::SettlingStarted { dryer: tunnel, from: f(340.0), to: f(260.0) });
    assert_eq!(basis(&press), SettlingBasis::Logged(1));
}

#[test]
fn the_log_of_settlings_is_bounded() {
    let (mut press, _, _, tunnel) = cotton_then_polyester();
    for _ in 0..230 {
        settled(&mut press, tunnel, 340.0, 260.0, 8.0);
    }
    assert_eq!(press.shop().heat.settlings().count(), 200);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(40))]

    #[test]
    fn the_pace_lies_within_what_was_logged_and_the_order_of_logging_changes_nothing(
        minutes in prop::collection::vec(1.0..60.0f64, 1..12),
    ) {
        let told = |minutes: &[f64]| {
            let mut press = Press::new();
            let tunnel = dryer(&mut press, "Tunnel");
            for m in minutes {
                settled(&mut press, tunnel, 340.0, 260.0, *m);
            }
            settling_pace(&press.shop(), tunnel, Direction::Down).seconds_per_degree * 80.0 / 108.0
        };
        let found = told(&minutes);
        let (least, most) = minutes.iter().fold((f64::MAX, f64::MIN), |(a, b), m| (a.min(*m), b.max(*m)));
        prop_assert!(found >= least - 0.01 && found <= most + 0.01);
        let mut turned = minutes.clone();
        turned.reverse();
        prop_assert!((told(&turned) - found).abs() < 1e-9);
        let slower = minutes.iter().filter(|m| **m >= found - 1e-3).count();
        prop_assert!(2 * slower >= minutes.len(), "a middle one");
    }

    #[test]
    fn whatever_the_settings_no_garment_goes_unwarned_into_a_dryer_past_its_limit(
        before in 200.0..400.0f64, after in 200.0..400.0f64, fabric in prop::sample::select(Fabric::ALL.to_vec()),
    ) {
        let (mut press, first) = Press::with_run(&[(Size::M, 1)]);
        press.set_up(first, vec![RunField::Dryer(Some(f(before)))]);
        let next = press.order("Next", None, fabric, &[(Size::M, 1)]);
        press.set_up(next, vec![RunField::Dryer(Some(f(after)))]);
        press.pulls(first, 0, 40, 1).end_at(60, first);
        let change = over(&press, next, 90);
        let lowest = fabric_limits(&press.shop()).iter().filter(|l| l.fabric == fabric).map(|l| l.temperature).min().unwrap();
        prop_assert_eq!(!change.danger.is_empty(), f(before) >= lowest);
        prop_assert_eq!(!change.exceeded_by_set_up.is_empty(), f(after) >= lowest);
        prop_assert!(change.hold_ink() || (f(before) < lowest && f(after) < lowest));
        prop_assert_eq!(change.wait.is_some(), (f(before).milli_celsius() - f(after).milli_celsius()).abs() > 1000);
    }
}
