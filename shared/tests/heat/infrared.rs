//! A reading by infrared may hold the ink, and clears nothing.

use super::measured::{measure, polyester_after, polyester_at_260, read_by_infrared};
use super::{check, cotton_at_340, cotton_then_polyester, dryer, f, heat, measured_with, of_run, over};
use crate::shop::{DAY, TestShop, wall};
use lastpull_core::facts::{Fact, RunField};
use lastpull_core::heat::{
    HeatCaveat, HeatFact, HeatStatus, LimitState, SensorMethod, SettledTime, TemperatureSource,
    checks_skipped_at_start, run_heat, settled_facts,
};
use lastpull_core::job::{Fabric, Size};
use lastpull_core::run::{CheckItem, CheckOutcome, CheckState, check_list};
use proptest::prelude::*;

/// Infrared at the exit sees the print after its hottest moment.
#[test]
fn an_infrared_reading_never_clears_a_fabric() {
    for (method, found, state) in [
        (SensorMethod::Probe, 255.0, LimitState::Clear),
        (SensorMethod::Strip, 255.0, LimitState::Clear),
        (SensorMethod::Infrared, 255.0, LimitState::Exceeded),
        (SensorMethod::Infrared, 275.0, LimitState::Exceeded),
    ] {
        let mut press = TestShop::new();
        let run = press.order("Jerseys", None, Fabric::Polyester, &[(Size::M, 3)]);
        let tunnel = dryer(&mut press, "Tunnel");
        let setting = if found > 265.0 { 260.0 } else { 290.0 };
        measured_with(&mut press, tunnel, setting, found, method);
        press.set_up(run, vec![RunField::Dryer(Some(f(setting)))]);
        let heat = of_run(&press, run);
        assert_eq!(heat.limits[0].state, state, "{method:?} {found}");
        let hotter = f(setting.max(found)).milli_celsius() - f(265.0).milli_celsius();
        if method == SensorMethod::Infrared {
            assert!((heat.limits[0].over.unwrap().milli_celsius() - hotter).abs() <= 1, "the hotter counts");
        }
        assert_eq!(heat.caveats.contains(&HeatCaveat::SensorInfrared), method == SensorMethod::Infrared);
        assert_eq!(over(&press, run, 10).hold_ink(), state == LimitState::Exceeded);
    }
}

#[test]
fn an_infrared_reading_does_not_clear_the_dryer_for_the_next_run() {
    let (mut press, cotton, _) = cotton_at_340();
    let tunnel = dryer(&mut press, "Second");
    heat(&mut press, cotton, HeatFact::DryerChosen(Some(tunnel)));
    press.set_up(cotton, vec![RunField::Dryer(Some(f(280.0)))]);
    measured_with(&mut press, tunnel, 280.0, 250.0, SensorMethod::Infrared);
    let jerseys = press.order("Jerseys", None, Fabric::Polyester, &[(Size::M, 3)]);
    heat(&mut press, jerseys, HeatFact::DryerChosen(Some(tunnel)));
    press.set_up(jerseys, vec![RunField::Dryer(Some(f(260.0)))]);
    press.pulls(cotton, 0, 40, 3).end_at(120, cotton);
    assert_eq!(over(&press, jerseys, 180).status(), HeatStatus::TooHot);
}

/// A dryer that cools from 340 °F: infrared at the exit reads 255 °F while the print may be far hotter.
#[test]
fn infrared_does_not_make_the_dryers_check() {
    let (mut press, _, jerseys, tunnel) = cotton_then_polyester();
    check(&mut press, 150, jerseys, CheckItem::Belt, CheckOutcome::Ticked);
    let before = over(&press, jerseys, 200);
    read_by_infrared(&mut press, 210, jerseys, 255.0);
    let change = over(&press, jerseys, 220);
    assert!(!change.verified && change.hold_ink() && !change.danger.is_empty());
    assert_eq!((change.current, change.status()), (before.current, before.status()), "it is no cooler than known");
    let list = check_list(&press.shop(), jerseys);
    let open = list.rows().find(|row| row.item == CheckItem::Dryer).unwrap();
    assert!(open.state.is_open() && matches!(open.state, CheckState::ByInfrared { breach: None, .. }));
    assert!(list.needs_heat_change());
    assert!(checks_skipped_at_start(&list, Some(&change)).iter().any(|(item, _)| *item == CheckItem::Dryer));
    let id = press.id();
    press.record_at(230, id, Fact::Heat(HeatFact::SettlingStarted { dryer: tunnel, from: f(340.0), to: f(260.0) }));
    let settling = over(&press, jerseys, 800).settling.unwrap();
    for (subject, fact) in settled_facts(&press.shop(), jerseys, settling, wall(900), SettledTime::Counts, None) {
        press.record_at(900, subject, fact);
    }
    assert!(!over(&press, jerseys, 910).hold_ink(), "the display of a settled dryer counts");
}

#[test]
fn infrared_at_the_limit_holds_until_probe_or_strip_says_otherwise() {
    for first in [true, false] {
        let (mut press, run) = polyester_at_260(first);
        check(&mut press, 390, run, CheckItem::Dryer, CheckOutcome::Ticked);
        assert!(!over(&press, run, 395).hold_ink());
        read_by_infrared(&mut press, 400, run, 266.0);
        let change = over(&press, run, 410);
        assert!(change.hold_ink() && !change.verified);
        // After cotton it may still be at 340 °F, which is hotter than what was read.
        let hottest = if first {
            (f(340.0), TemperatureSource::PreviousRun)
        } else {
            (f(266.0), TemperatureSource::ReadByInfrared)
        };
        assert_eq!(change.current, Some(hottest));
        assert_eq!(of_run(&press, run).limits[0].state, LimitState::Exceeded, "on paper too");
        for outcome in [CheckOutcome::Ticked, CheckOutcome::Cleared, CheckOutcome::Ticked] {
            check(&mut press, 420, run, CheckItem::Dryer, outcome);
            assert!(over(&press, run, 430).hold_ink(), "{outcome:?}");
        }
        read_by_infrared(&mut press, 440, run, 250.0);
        assert!(over(&press, run, 445).hold_ink(), "a cooler one by infrared lowers nothing");
        measure(&mut press, 450, run, 262.0);
        assert!(!over(&press, run, 460).hold_ink());
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(60))]

    /// Whatever is tapped and read by infrared after it: a temperature measured at the limit holds until the next one is measured.
    #[test]
    fn no_sequence_of_taps_and_infrared_readings_lifts_what_was_measured(
        found in 265.0..420.0f64,
        taps in prop::collection::vec((0usize..4, 200.0..300.0f64), 0..8),
    ) {
        let (mut press, run) = polyester_at_260(true);
        measure(&mut press, 400, run, found);
        for (tap, read) in taps {
            match tap {
                0 => check(&mut press, 410, run, CheckItem::Dryer, CheckOutcome::Ticked),
                1 => check(&mut press, 410, run, CheckItem::Dryer, CheckOutcome::Cleared),
                2 => check(&mut press, 410, run, CheckItem::Dryer, CheckOutcome::Skipped),
                _ => read_by_infrared(&mut press, 410, run, read),
            }
            let change = over(&press, run, 420);
            prop_assert!(change.hold_ink() && !change.verified && !change.danger.is_empty());
        }
    }

    /// Three settings (the second is near the run's 260 °F, the third far), any methods, some of them long ago.
    #[test]
    fn no_infrared_reading_ever_lowers_what_a_limit_is_compared_with(
        readings in prop::collection::vec((0u64..200, 0usize..3, 0usize..3, 0usize..3), 0..30),
        later in prop::collection::vec((0usize..3, 0usize..3), 1..15),
    ) {
        let settings = [260.0, 275.0, 340.0];
        let mut all: Vec<_> = readings.into_iter().map(|(day, method, setting, off)| {
            let method = [SensorMethod::Probe, SensorMethod::Strip, SensorMethod::Infrared][method];
            (day, method, settings[setting], settings[setting] + [-20.0, 0.0, 20.0][off])
        }).collect();
        all.sort_by_key(|reading| reading.0);
        let over_limit = |all: &[(u64, SensorMethod, f64, f64)]| {
            let (press, run) = polyester_after(all);
            run_heat(&press.shop(), run, wall(200 * DAY)).unwrap().limits[0].over.unwrap()
        };
        let mut before = over_limit(&all);
        for (setting, off) in later {
            let setting = settings[setting];
            all.push((200, SensorMethod::Infrared, setting, setting + [-20.0, 0.0, 20.0][off]));
            let after = over_limit(&all);
            prop_assert!(after >= before, "{before:?} {after:?} {all:?}");
            before = after;
        }
    }
}
