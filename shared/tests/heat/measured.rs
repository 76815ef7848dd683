//! What was measured is compared with limits and cure before any tolerance.

use super::{belt, check, cotton_at_340, cotton_then_polyester, dryer, f, measured, of_run, over, seconds, sheet};
use crate::shop::{DAY, TestShop, wall};
use lastpull_core::facts::{Fact, RunField};
use lastpull_core::heat::{
    CureEstimate, HeatCaveat, HeatFact, HeatStatus, LimitName, LimitState, MeasuredBreach, SensorMethod, SettledTime,
    TemperatureSource, checks_skipped_at_start, limits_while_entering, run_heat, settled_facts,
};
use lastpull_core::ids::RunId;
use lastpull_core::job::{Fabric, Size};
use lastpull_core::run::{CheckItem, CheckOutcome, CheckState, EarlierMeasurement, check_list};

/// Temperatures published for dye migration and for the cure of water-based ink, in °F: rows of
/// `cure_common_practice.csv` that were read in their source.
fn published(what: &str) -> f64 {
    let rows = include_str!("../data/cure_common_practice.csv").lines().filter(|row| row.contains(",opened,"));
    rows.filter(|row| row.starts_with(what))
        .map(|row| row.split(',').nth(1).unwrap().parse().unwrap())
        .fold(f64::MAX, f64::min)
}

pub(super) fn measure(press: &mut TestShop, at: u64, run: RunId, fahrenheit: f64) {
    let value = i64::from(f(fahrenheit).milli_celsius());
    check(press, at, run, CheckItem::Dryer, CheckOutcome::Measured(value));
}

pub(super) fn dryer_state(press: &TestShop, run: RunId) -> CheckState {
    check_list(&press.shop(), run).rows().find(|row| row.item == CheckItem::Dryer).unwrap().state.clone()
}

/// A polyester run at 260 °F, with nothing else left to do at the dryer.
pub(super) fn polyester_at_260(first: bool) -> (TestShop, RunId) {
    let (mut press, _, jerseys, _) = cotton_then_polyester();
    if first {
        check(&mut press, 150, jerseys, CheckItem::Belt, CheckOutcome::Ticked);
        return (press, jerseys);
    }
    // The same set-up as the run before: no step is left to change.
    let again = press.order("More jerseys", None, Fabric::Polyester, &[(Size::M, 3)]);
    press.set_up(again, vec![RunField::Belt(Some(belt(20.0))), RunField::Dryer(Some(f(260.0)))]);
    press.pulls(jerseys, 130, 40, 3).end_at(300, jerseys);
    (press, again)
}

/// Set to 260 °F the tolerance of 9 °F reaches past 265 °F, where an ink maker's bulletin says that dye starts to move.
#[test]
fn a_dryer_measured_at_the_dye_limit_or_above_is_never_close_enough() {
    let limit = published("polyester: disperse dye starts to move");
    for first in [true, false] {
        for (found, passes) in
            [(limit - 1.0, true), (limit - 0.1, true), (limit, false), (limit + 2.0, false), (limit + 4.0, false)]
        {
            let (mut press, run) = polyester_at_260(first);
            measure(&mut press, 400, run, found);
            let CheckState::Measured { within, breach, .. } = dryer_state(&press, run) else { panic!() };
            assert_eq!(within, passes, "{found}");
            let change = over(&press, run, 410);
            assert_eq!((change.verified, change.hold_ink()), (passes, !passes), "{found}, changed: {first}");
            if passes {
                assert_eq!(breach, None);
                continue;
            }
            let Some(MeasuredBreach::Limit(exceeded)) = breach else { panic!("{breach:?}") };
            assert_eq!((exceeded.name, exceeded.limit), (LimitName::DyeMigration, f(limit)));
            assert_eq!(
                (change.status(), change.current),
                (HeatStatus::TooHot, Some((f(found), TemperatureSource::Measured)))
            );
            assert!(
                checks_skipped_at_start(&check_list(&press.shop(), run), Some(&change))
                    .iter()
                    .any(|(item, _)| *item == CheckItem::Dryer)
            );
            let limits = of_run(&press, run).limits;
            assert_eq!(limits[0].state, LimitState::Exceeded, "on paper too");
        }
    }
}

/// 300 to 320 °F: the ink's temperature by "curing basics", an ink supplier's page.
#[test]
fn a_dryer_below_the_cure_is_too_cool_however_close_to_its_setting() {
    let cure = published("water-based: print (ink) temperature") + 20.0;
    for (found, reached) in [(cure + 9.0, true), (cure, true), (cure - 0.1, false), (cure - 9.0, false)] {
        let (mut press, run) = TestShop::with_run(&[(Size::M, 3)]);
        let tunnel = dryer(&mut press, "Tunnel");
        measured(&mut press, tunnel, cure, cure);
        sheet(&mut press, cure, 90.0);
        press.set_up(run, vec![RunField::Dryer(Some(f(cure))), RunField::Belt(Some(belt(24.0)))]);
        assert!(matches!(of_run(&press, run).cure, CureEstimate::Reached { .. }));
        measure(&mut press, 10, run, found);
        let change = over(&press, run, 20);
        assert_eq!(matches!(of_run(&press, run).cure, CureEstimate::Reached { .. }), reached, "{found} on paper");
        assert_eq!((change.hold_ink(), change.status() == HeatStatus::TooCool), (!reached, !reached), "{found}");
        let CheckState::Measured { within, breach, .. } = dryer_state(&press, run) else { panic!() };
        assert_eq!(within, reached);
        if !reached {
            let Some(MeasuredBreach::BelowCure { cure: at, short }) = breach else { panic!("{breach:?}") };
            assert_eq!(at, f(cure));
            assert!((short.milli_celsius() - (f(cure).milli_celsius() - f(found).milli_celsius())).abs() <= 1);
        }
    }
}

#[test]
fn a_measurement_for_another_setting_says_nothing() {
    let (mut press, run) = polyester_at_260(true);
    measure(&mut press, 400, run, 268.0);
    press.set_up(run, vec![RunField::Dryer(Some(f(250.0)))]);
    assert_eq!((dryer_state(&press, run), of_run(&press, run).measured), (CheckState::Open, None));
}

#[test]
fn a_setting_changed_and_changed_back_keeps_what_was_measured_as_history() {
    let row = |press: &TestShop, run: RunId| {
        check_list(&press.shop(), run).rows().find(|row| row.item == CheckItem::Dryer).unwrap().clone()
    };
    let set = |press: &mut TestShop, run: RunId, fahrenheit: f64| {
        press.set_up(run, vec![RunField::Dryer(Some(f(fahrenheit)))]);
    };
    for (found, is_held) in [(262.0, false), (268.0, true)] {
        let (mut press, run) = polyester_at_260(true);
        measure(&mut press, 400, run, found);
        set(&mut press, run, 250.0);
        measure(&mut press, 500, run, 251.0);
        assert_eq!(row(&press, run).history, None, "of another setting");
        set(&mut press, run, 260.0);
        let back = row(&press, run);
        assert_eq!((back.state.clone(), back.held.is_some()), (CheckState::Open, is_held), "{found}");
        let value = i64::from(f(found).milli_celsius());
        assert_eq!(back.history, Some(EarlierMeasurement { value, at: wall(400) }));
        assert!(!over(&press, run, 510).verified, "it clears nothing");
        // At another belt speed it was measured for nothing.
        press.set_up(run, vec![RunField::Belt(Some(belt(30.0)))]);
        assert_eq!(row(&press, run).history, None);
        press.set_up(run, vec![RunField::Belt(Some(belt(20.0)))]);
        check(&mut press, 600, run, CheckItem::Dryer, CheckOutcome::Ticked);
        let ticked = row(&press, run);
        assert_eq!((ticked.breach().is_some(), ticked.history), (is_held, None), "a look does not lift it");
        assert_eq!(ticked.state == CheckState::Ticked, !is_held);
        measure(&mut press, 700, run, 261.0);
        assert!(matches!(row(&press, run).state, CheckState::Measured { within: true, breach: None, .. }));
    }
}

/// The display shows 260 °F while 268 °F were measured at the print: looking at it again proves nothing.
#[test]
fn a_settled_display_does_not_lift_what_was_measured_near_the_setting() {
    for (found, lifted) in [(268.0, false), (300.0, true)] {
        let (mut press, _, jerseys, tunnel) = cotton_then_polyester();
        check(&mut press, 150, jerseys, CheckItem::Belt, CheckOutcome::Ticked);
        let id = press.id();
        press.record_at(200, id, Fact::Heat(HeatFact::SettlingStarted { dryer: tunnel, from: f(340.0), to: f(260.0) }));
        measure(&mut press, 800, jerseys, found);
        let settling = over(&press, jerseys, 810).settling.unwrap();
        for (subject, fact) in settled_facts(&press.shop(), jerseys, settling, wall(900), SettledTime::Counts, None) {
            press.record_at(900, subject, fact);
        }
        assert_eq!(over(&press, jerseys, 910).hold_ink(), !lifted, "{found}");
    }
}

pub(super) fn read_by_infrared(press: &mut TestShop, at: u64, run: RunId, fahrenheit: f64) {
    let value = i64::from(f(fahrenheit).milli_celsius());
    check(press, at, run, CheckItem::Dryer, CheckOutcome::ReadByInfrared(value));
}

#[test]
fn a_hold_that_a_measurement_imposed_is_lifted_only_by_measuring() {
    use CheckOutcome::{Cleared, Skipped, Ticked};
    for first in [true, false] {
        for said in
            [&[][..], &[Cleared], &[Cleared, Ticked], &[Ticked], &[Skipped], &[Cleared, Ticked, Cleared, Ticked]]
        {
            for found in [265.0, 268.0, 300.0] {
                let (mut press, run) = polyester_at_260(first);
                measure(&mut press, 400, run, found);
                for outcome in said {
                    check(&mut press, 410, run, CheckItem::Dryer, *outcome);
                }
                let change = over(&press, run, 420);
                assert!(change.hold_ink() && !change.verified, "{found} {said:?}");
                assert_eq!(
                    (change.status(), change.current),
                    (HeatStatus::TooHot, Some((f(found), TemperatureSource::Measured)))
                );
                let list = check_list(&press.shop(), run);
                let row = list.rows().find(|row| row.item == CheckItem::Dryer).unwrap();
                assert!(matches!(row.breach(), Some(MeasuredBreach::Limit(_))), "{found} {said:?}");
                assert!(
                    checks_skipped_at_start(&list, Some(&change)).iter().any(|(item, _)| *item == CheckItem::Dryer)
                );
                read_by_infrared(&mut press, 430, run, 250.0);
                assert!(over(&press, run, 440).hold_ink(), "infrared lifts nothing");
                measure(&mut press, 450, run, 258.0);
                assert!(!over(&press, run, 460).hold_ink(), "{found} {said:?}");
            }
        }
    }
}

#[test]
fn a_mistyped_measurement_that_breaches_nothing_can_be_taken_back() {
    let (mut press, run) = polyester_at_260(true);
    measure(&mut press, 400, run, 200.0);
    assert!(over(&press, run, 405).hold_ink());
    check(&mut press, 410, run, CheckItem::Dryer, CheckOutcome::Cleared);
    check(&mut press, 420, run, CheckItem::Dryer, CheckOutcome::Ticked);
    assert!(!over(&press, run, 430).hold_ink());
}

/// Hold times: the sheet of the run's ink, 90 s. The tolerances of 5 s and a twentieth of the speed do not reach past it.
#[test]
fn a_time_in_the_heat_measured_short_of_the_cure_is_never_close_enough() {
    use CheckItem::{Belt, Dwell};
    let milliseconds = |s: f64| i64::from(seconds(s).milliseconds());
    let speed = |inches: f64| i64::from(belt(inches).micrometres_per_second());
    // 36 inches under heat at 24 inches a minute are 90 s.
    for (item, value, passes, short) in [
        (Dwell, milliseconds(90.0), 1, false),
        (Dwell, milliseconds(94.0), 1, false),
        (Dwell, milliseconds(89.9), 1, true),
        (Dwell, milliseconds(86.0), 1, true),
        (Dwell, milliseconds(86.0), 2, false),
        (Belt, speed(24.0), 1, false),
        (Belt, speed(23.0), 1, false),
        (Belt, speed(24.5), 1, true),
        (Belt, speed(25.2), 1, true),
        (Belt, speed(25.2), 2, false),
    ] {
        let (mut press, run, _) = cotton_at_340();
        sheet(&mut press, 320.0, 90.0);
        press.set_up(run, vec![RunField::Dwell(Some(seconds(90.0))), RunField::Passes(passes)]);
        assert!(!over(&press, run, 5).hold_ink());
        check(&mut press, 10, run, item, CheckOutcome::Measured(value));
        let list = check_list(&press.shop(), run);
        let row = list.rows().find(|row| row.item == item).unwrap();
        assert!(
            matches!(row.state, CheckState::Measured { within, .. } if within != short),
            "{item:?} {value} {passes}"
        );
        assert_eq!(matches!(row.breach(), Some(MeasuredBreach::ShortOfHold { .. })), short);
        let change = over(&press, run, 20);
        assert_eq!((change.hold_ink(), change.status() == HeatStatus::TooShort), (short, short), "{item:?} {value}");
        let skipped = checks_skipped_at_start(&list, Some(&change));
        assert_eq!(skipped.iter().any(|(of, _)| *of == item), short);
        assert_eq!(matches!(of_run(&press, run).cure, CureEstimate::Reached { .. }), !short, "on paper too");
        if short {
            check(&mut press, 30, run, item, CheckOutcome::Cleared);
            check(&mut press, 40, run, item, CheckOutcome::Ticked);
            assert!(over(&press, run, 50).hold_ink(), "a look at the display does not lift it");
            check(
                &mut press,
                60,
                run,
                item,
                CheckOutcome::Measured(if item == Belt { speed(24.0) } else { milliseconds(91.0) }),
            );
            assert!(!over(&press, run, 70).hold_ink());
        }
    }
}

/// A polyester run at 260 °F through a dryer with these measurements: days after opening, method, setting and found in °F.
pub(super) fn polyester_after(readings: &[(u64, SensorMethod, f64, f64)]) -> (TestShop, RunId) {
    let mut press = TestShop::new();
    let run = press.order("Jerseys", None, Fabric::Polyester, &[(Size::M, 3)]);
    let tunnel = dryer(&mut press, "Tunnel");
    for (day, method, setting, found) in readings {
        let fact = HeatFact::SensorRead { setting: f(*setting), found: f(*found), method: *method };
        press.record_at(day * DAY, tunnel, Fact::Heat(fact));
    }
    press.set_up(run, vec![RunField::Dryer(Some(f(260.0)))]);
    (press, run)
}

#[test]
fn a_less_reliable_reading_never_lifts_the_hold_of_a_probe() {
    use SensorMethod::{Infrared, Probe, Strip};
    let held = (0, Probe, 260.0, 268.0);
    for (later, holds, why) in [
        (vec![], true, "268 at the print"),
        (vec![(1, Infrared, 260.0, 255.0)], true, "by infrared"),
        (vec![(1, Infrared, 260.0, 255.0); 30], true, "by infrared, however often"),
        (vec![(1, Probe, 340.0, 300.0)], true, "far from the setting"),
        (vec![(91, Infrared, 260.0, 255.0)], true, "the probe is old, and infrared no better"),
        (vec![(91, Probe, 340.0, 300.0)], true, "the probe is old, and this one far"),
        (vec![(1, Probe, 260.0, 255.0)], false, "by probe at the setting"),
        (vec![(1, Strip, 250.0, 245.0)], false, "by strip near the setting"),
        (vec![(1, Probe, 260.0, 255.0), (2, Infrared, 260.0, 250.0)], false, "the probe stands"),
        (vec![(1, Probe, 260.0, 255.0), (2, Infrared, 260.0, 266.0)], true, "infrared is rather too low than too high"),
        (vec![(1, Probe, 260.0, 255.0), (2, Probe, 340.0, 300.0)], false, "one far away says nothing here"),
    ] {
        let readings: Vec<_> = [held].into_iter().chain(later).collect();
        let now = readings.last().unwrap().0 * DAY;
        let (press, run) = polyester_after(&readings);
        assert_eq!(over(&press, run, now).hold_ink(), holds, "{why}");
        let paper = run_heat(&press.shop(), run, wall(now)).unwrap();
        assert_eq!(paper.exceeded_limits().next().is_some(), holds, "{why}, on paper");
        let shop = press.shop();
        let entering =
            limits_while_entering(&shop, shop.run(run).unwrap().lot.unwrap(), Some(run), "Brick", f(260.0), wall(now));
        assert_eq!(!entering.is_empty(), holds, "{why}, while entering");
    }
}

#[test]
fn a_hotter_reading_that_counts_for_limits_only_is_explained() {
    use SensorMethod::{Infrared, Probe};
    let (press, run) = polyester_after(&[(0, Probe, 260.0, 255.0), (0, Infrared, 260.0, 266.0)]);
    let heat = of_run(&press, run);
    assert_eq!(heat.ink_temperature, Some(f(255.0)), "the probe says what the ink gets");
    assert!(heat.caveats.contains(&HeatCaveat::SensorHotterReading));
    assert!(heat.caveats.contains(&HeatCaveat::SensorInfrared));
    let (press, run) = polyester_after(&[(0, Infrared, 260.0, 266.0), (0, Probe, 260.0, 255.0)]);
    let caveats = of_run(&press, run).caveats;
    let of_sensor = [HeatCaveat::SensorHotterReading, HeatCaveat::SensorInfrared];
    assert!(!of_sensor.iter().any(|caveat| caveats.contains(caveat)), "the probe came after: {caveats:?}");
}

#[test]
fn the_shorter_of_two_dwells_counts_however_little_they_differ() {
    let (mut press, run, _) = cotton_at_340();
    sheet(&mut press, 320.0, 90.0);
    for (set, used, reached) in [(87.0, 87.0, false), (94.0, 90.0, true), (90.0, 90.0, true)] {
        press.set_up(run, vec![RunField::Dwell(Some(seconds(set)))]);
        let heat = of_run(&press, run);
        assert_eq!((heat.dwell.used(), heat.dwell.differ), (Some(seconds(used)), false), "{set}");
        assert_eq!(matches!(heat.cure, CureEstimate::Reached { .. }), reached, "{set}");
    }
}
