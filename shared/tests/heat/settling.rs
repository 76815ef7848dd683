//! Timed settlings of a dryer, and what is learned from them.

use super::{check, cotton_then_polyester, dryer, f, heat, over, seconds, settled};
use crate::shop::{HOUR, TestShop, wall};
use lastpull_core::facts::{Fact, RunField};
use lastpull_core::form::FormProblem;
use lastpull_core::heat::{
    Direction, HeatFact, HeaterField, HeaterKind, LimitOrigin, SettledTime, SettlingBasis, SettlingForm,
    TemperatureSource, fabric_limits, heater_list, settled_facts, settled_undo, settling_doubt, settling_log,
    settling_pace, settling_time, teaches_pace,
};
use lastpull_core::job::{Fabric, Size};
use lastpull_core::run::{CheckItem, CheckOutcome};
use lastpull_core::units::{NumberProblem, Units};
use proptest::prelude::*;
use uuid::Uuid;

#[test]
fn the_wait_is_learned_separately_for_heating_and_cooling() {
    let (mut press, _, jerseys, tunnel) = cotton_then_polyester();
    let other = dryer(&mut press, "Small");
    settled(&mut press, other, 340.0, 260.0, 60.0);
    settled(&mut press, tunnel, 260.0, 340.0, 4.0);
    settled(&mut press, tunnel, 260.0, 340.0, 4.0);
    let pace = |press: &TestShop, direction| settling_pace(&press.shop(), tunnel, direction);
    assert_eq!(pace(&press, Direction::Down).basis, SettlingBasis::OurOwn);
    let up = pace(&press, Direction::Up);
    assert!((up.seconds_per_degree - 240.0 / (80.0 / 1.8)).abs() < 0.01);
    for minutes in [8.0, 10.0, 200.0] {
        settled(&mut press, tunnel, 340.0, 260.0, minutes);
    }
    let down = pace(&press, Direction::Down);
    assert_eq!(down.basis, SettlingBasis::Logged(2), "the forgotten one is left out");
    assert!((down.seconds_per_degree - 600.0 / (80.0 / 1.8)).abs() < 0.01, "the forgotten one moves nothing");
    assert_eq!(pace(&press, Direction::Up), up);
    let change = over(&press, jerseys, 180);
    assert_eq!(change.wait.map(|wait| (wait.minutes, wait.basis)), Some((10, SettlingBasis::Logged(2))));
    assert_eq!(
        change.current,
        Some((f(340.0), TemperatureSource::PreviousRun)),
        "a log entered afterwards cools no dryer"
    );
    assert!(!change.danger.is_empty());
}

#[test]
fn of_two_logs_the_slower_one_counts_and_a_deleted_log_does_not() {
    let (mut press, _, _, tunnel) = cotton_then_polyester();
    settled(&mut press, tunnel, 340.0, 260.0, 8.0);
    let slow = settled(&mut press, tunnel, 340.0, 260.0, 12.0);
    let minutes =
        |press: &TestShop| settling_pace(&press.shop(), tunnel, Direction::Down).seconds_per_degree * 80.0 / 108.0;
    assert!((minutes(&press) - 12.0).abs() < 0.01);
    settled(&mut press, tunnel, 340.0, 260.0, 8.0);
    press.record(slow, Fact::Deleted);
    assert!((minutes(&press) - 8.0).abs() < 0.01);
}

#[test]
fn a_cooling_dryer_counts_down_and_is_treated_as_hot_until_it_has_settled() {
    let (mut press, _, jerseys, tunnel) = cotton_then_polyester();
    let id = press.id();
    let started = HeatFact::SettlingStarted { dryer: tunnel, from: f(340.0), to: f(260.0) };
    press.record_at(200, id, Fact::Heat(started));
    let change = over(&press, jerseys, 500);
    assert_eq!(change.current, Some((f(340.0), TemperatureSource::CoolingDown)));
    let settling = change.settling.unwrap();
    assert_eq!((settling.id, settling.elapsed), (id, seconds(300.0)));
    assert_eq!((settling.left.seconds().round() as u32, settling.to), (589, f(260.0)));
    let later = settling.at(wall(620));
    assert_eq!((later.elapsed, later.left.seconds().round() as u32), (seconds(420.0), 469));
    assert_eq!(settling.at(wall(9_000)).left, seconds(0.0), "it should have settled");
    assert_eq!(change.wait.unwrap().minutes, 10);
    assert!(change.hold_ink() && !change.danger.is_empty());
    press.record_at(900, id, Fact::Heat(HeatFact::SettlingFinished(seconds(700.0))));
    let change = over(&press, jerseys, 901);
    assert_eq!(
        (change.current, change.settling, change.wait),
        (Some((f(260.0), TemperatureSource::Settled)), None, None)
    );
    assert!(change.danger.is_empty());
    assert!(change.hold_ink(), "the checks of dryer and belt are still to make");
}

#[test]
fn confirming_that_the_dryer_settled_at_its_temperature_ticks_its_check() {
    let (mut press, _, jerseys, tunnel) = cotton_then_polyester();
    let going = |press: &mut TestShop, at, to| {
        let id = press.id();
        press.record_at(at, id, Fact::Heat(HeatFact::SettlingStarted { dryer: tunnel, from: f(340.0), to: f(to) }));
        over(press, jerseys, at).settling.unwrap()
    };
    let elsewhere = going(&mut press, 200, 300.0);
    let said = settled_facts(&press.shop(), jerseys, elsewhere, wall(800), SettledTime::Counts, None);
    assert_eq!(said, [(elsewhere.id, Fact::Heat(HeatFact::SettlingFinished(seconds(600.0))))]);
    let there = going(&mut press, 210, 260.0);
    for (subject, fact) in
        settled_facts(&press.shop(), jerseys, there, wall(900), SettledTime::Counts, Some("Ines".into()))
    {
        press.record_at(900, subject, fact);
    }
    check(&mut press, 910, jerseys, CheckItem::Belt, CheckOutcome::Ticked);
    let change = over(&press, jerseys, 920);
    assert!(change.verified && change.danger.is_empty() && !change.hold_ink());
    assert_eq!(press.shop().heat.settlings().find(|(id, _)| *id == there.id).unwrap().1.took, Some(seconds(690.0)));
}

#[test]
fn a_settling_to_another_temperature_does_not_end_the_wait() {
    let (mut press, _, jerseys, tunnel) = cotton_then_polyester();
    let id = press.id();
    press.record_at(200, id, Fact::Heat(HeatFact::SettlingStarted { dryer: tunnel, from: f(340.0), to: f(300.0) }));
    let change = over(&press, jerseys, 210);
    assert!(change.settling.is_some() && change.settling_to_setting().is_none() && change.wait.is_some());
}

#[test]
fn units_are_listed_dryers_first_and_settlings_newest_first() {
    let (mut press, _, _, tunnel) = cotton_then_polyester();
    let flash = press.id();
    let fields = vec![HeaterField::Kind(HeaterKind::Flash), HeaterField::Name("Flash".into())];
    press.record_at(200, flash, Fact::Heat(HeatFact::HeaterSet(fields)));
    let second = dryer(&mut press, "Small");
    let listed = |press: &TestShop| heater_list(&press.shop()).iter().map(|(id, _)| *id).collect::<Vec<_>>();
    assert_eq!(listed(&press), [tunnel, second, flash]);
    press.record(tunnel, Fact::Deleted);
    assert_eq!(listed(&press), [second, flash]);
    let first = settled(&mut press, second, 340.0, 260.0, 8.0);
    let last = press.id();
    press.record_at(210, last, Fact::Heat(HeatFact::SettlingStarted { dryer: second, from: f(260.0), to: f(340.0) }));
    let log: Vec<Uuid> = settling_log(&press.shop()).iter().map(|(id, _)| *id).collect();
    assert_eq!(log, [last, first]);
}

#[test]
fn a_settling_that_ended_before_its_start_arrived_waits_for_it() {
    let (mut press, _, _, tunnel) = cotton_then_polyester();
    let id = press.id();
    heat(&mut press, id, HeatFact::SettlingFinished(seconds(600.0)));
    let basis = |press: &TestShop| settling_pace(&press.shop(), tunnel, Direction::Down).basis;
    assert_eq!(basis(&press), SettlingBasis::OurOwn);
    heat(&mut press, id, HeatFact::SettlingStarted { dryer: tunnel, from: f(340.0), to: f(260.0) });
    assert_eq!(basis(&press), SettlingBasis::OneLog);
}

#[test]
fn the_log_of_settlings_is_bounded() {
    let (mut press, _, _, tunnel) = cotton_then_polyester();
    for _ in 0..230 {
        settled(&mut press, tunnel, 340.0, 260.0, 8.0);
    }
    assert_eq!(press.shop().heat.settlings().count(), 200);
}

/// A touch on the wrong button after 90 s of 15 min would make the next wait 2 min.
#[test]
fn one_log_alone_never_shortens_the_wait() {
    for (minutes, expected) in [(1.5, 889), (8.0, 889), (20.0, 1_200)] {
        let (mut press, _, jerseys, tunnel) = cotton_then_polyester();
        settled(&mut press, tunnel, 340.0, 260.0, minutes);
        let wait = over(&press, jerseys, 180).wait.unwrap();
        assert_eq!((wait.seconds.seconds().round() as u32, wait.basis), (expected, SettlingBasis::OneLog), "{minutes}");
        settled(&mut press, tunnel, 340.0, 260.0, 8.0);
        let wait = over(&press, jerseys, 180).wait.unwrap();
        let slower = f64::max(minutes, 8.0) * 60.0;
        assert_eq!((wait.seconds.seconds().round(), wait.basis), (slower, SettlingBasis::Logged(2)), "{minutes}");
    }
}

/// Two seconds after the start of 340 → 260 °F, 44.4 °C: a slip, not a dryer. Bounds: a tenth and ten times our own cautious
/// 20 s a degree, and a fourth and four times what is expected, by the dryer's own logs from two on.
#[test]
fn a_settling_unlike_the_dryer_is_asked_about_before_it_counts() {
    for (logged, after, too_soon, doubted, can_count) in [
        (None, 2, true, true, false),
        (None, 88, true, true, false),
        (None, 90, true, true, true),
        (None, 222, true, true, true),
        (None, 223, false, false, true),
        (None, 3_555, false, false, true),
        (None, 3_556, false, true, true),
        (None, 8_900, false, true, false),
        (Some(12.0), 2, true, true, false),
        (Some(12.0), 150, true, true, true),
        (Some(12.0), 200, false, false, true),
        (Some(12.0), 2_900, false, true, true),
    ] {
        let (mut press, _, jerseys, tunnel) = cotton_then_polyester();
        if let Some(minutes) = logged {
            settled(&mut press, tunnel, 340.0, 260.0, minutes);
            settled(&mut press, tunnel, 340.0, 260.0, minutes);
        }
        let id = press.id();
        press.record_at(200, id, Fact::Heat(HeatFact::SettlingStarted { dryer: tunnel, from: f(340.0), to: f(260.0) }));
        let settling = over(&press, jerseys, 200).settling.unwrap();
        let doubt = settling_doubt(&press.shop(), settling, wall(200 + after));
        assert_eq!(doubt.is_some(), doubted, "{logged:?} {after}");
        if let Some(doubt) = doubt {
            let expected = logged.map_or(888.9, |minutes| minutes * 60.0);
            assert_eq!((doubt.too_soon, doubt.can_count, doubt.took), (too_soon, can_count, seconds(after as f64)));
            assert!((doubt.expected.seconds() - expected).abs() < 0.1);
        }
    }
}

#[test]
fn a_second_touch_within_ten_seconds_is_asked_about() {
    let (mut press, _, jerseys, tunnel) = cotton_then_polyester();
    let id = press.id();
    press.record_at(200, id, Fact::Heat(HeatFact::SettlingStarted { dryer: tunnel, from: f(265.0), to: f(260.0) }));
    let settling = over(&press, jerseys, 200).settling.unwrap();
    let doubt = |after: u64| settling_doubt(&press.shop(), settling, wall(200 + after));
    assert!(doubt(9).is_some_and(|doubt| doubt.too_soon && !doubt.can_count) && doubt(10).is_none());
}

/// A device that asked nothing may have stored such a time; it must not turn twelve minutes into one.
#[test]
fn an_implausible_time_teaches_nothing_wherever_it_comes_from() {
    let (mut press, _, jerseys, tunnel) = cotton_then_polyester();
    let times = [(2.0, false), (88.0, false), (90.0, true), (8_880.0, true), (8_900.0, false), (0.0, false)];
    for (at, (took, teaches)) in (200..).step_by(10).zip(times) {
        let id = press.id();
        press.record_at(at, id, Fact::Heat(HeatFact::SettlingStarted { dryer: tunnel, from: f(340.0), to: f(260.0) }));
        press.record_at(at + 5, id, Fact::Heat(HeatFact::SettlingFinished(seconds(took))));
        let shop = press.shop();
        let (_, stored) = shop.heat.settlings().find(|(other, _)| *other == id).unwrap();
        assert_eq!(teaches_pace(stored), teaches, "{took}");
        press.record_at(at + 6, id, Fact::Deleted);
    }
    let id = press.id();
    press.record_at(300, id, Fact::Heat(HeatFact::SettlingStarted { dryer: tunnel, from: f(340.0), to: f(260.0) }));
    press.record_at(302, id, Fact::Heat(HeatFact::SettlingFinished(seconds(2.0))));
    let change = lastpull_core::units::TemperatureDelta::between(f(320.0), f(260.0));
    let (wait, basis) = settling_time(&press.shop(), Some(tunnel), change).unwrap();
    assert_eq!((wait.seconds().round() as u32, basis), (667, SettlingBasis::OurOwn), "eleven minutes, not one");
    assert!(over(&press, jerseys, 310).wait.is_none_or(|wait| wait.basis == SettlingBasis::OurOwn));
}

#[test]
fn a_time_left_out_still_says_that_the_dryer_is_there() {
    let (mut press, _, jerseys, tunnel) = cotton_then_polyester();
    let id = press.id();
    press.record_at(200, id, Fact::Heat(HeatFact::SettlingStarted { dryer: tunnel, from: f(340.0), to: f(260.0) }));
    let settling = over(&press, jerseys, 200).settling.unwrap();
    for (subject, fact) in settled_facts(&press.shop(), jerseys, settling, wall(205), SettledTime::LeftOut, None) {
        press.record_at(205, subject, fact);
    }
    let change = over(&press, jerseys, 210);
    assert_eq!(change.current, Some((f(260.0), TemperatureSource::Settled)));
    assert!(change.verified && change.danger.is_empty());
    assert_eq!(settling_pace(&press.shop(), tunnel, Direction::Down).basis, SettlingBasis::OurOwn);
}

#[test]
fn undo_of_a_mistaken_end_teaches_nothing_and_holds_as_before() {
    for time in [SettledTime::Counts, SettledTime::LeftOut] {
        for earlier in [
            &[][..],
            &[CheckOutcome::Skipped],
            &[CheckOutcome::Measured(149_000)],
            &[CheckOutcome::Measured(149_000), CheckOutcome::Cleared],
        ] {
            let (mut press, _, jerseys, tunnel) = cotton_then_polyester();
            check(&mut press, 190, jerseys, CheckItem::Belt, CheckOutcome::Ticked);
            for outcome in earlier {
                check(&mut press, 195, jerseys, CheckItem::Dryer, *outcome);
            }
            let was = over(&press, jerseys, 196);
            let id = press.id();
            let start = HeatFact::SettlingStarted { dryer: tunnel, from: f(340.0), to: f(260.0) };
            press.record_at(200, id, Fact::Heat(start));
            let settling = over(&press, jerseys, 200).settling.unwrap();
            let before = press.shop();
            let facts = settled_facts(&before, jerseys, settling, wall(500), time, None);
            let undo = settled_undo(&before, &facts);
            for (at, (subject, fact)) in [500; 9].into_iter().zip(facts).chain([510; 9].into_iter().zip(undo)) {
                press.record_at(at, subject, fact);
            }
            let now = over(&press, jerseys, 520);
            assert!(was.hold_ink() && now.hold_ink());
            assert_eq!(
                (now.status(), now.danger, now.verified),
                (was.status(), was.danger, was.verified),
                "{earlier:?}"
            );
            assert_eq!(settling_pace(&press.shop(), tunnel, Direction::Down).basis, SettlingBasis::OurOwn);
            // What had been measured on the way still asks for another measurement.
            check(&mut press, 530, jerseys, CheckItem::Dryer, CheckOutcome::Ticked);
            let was_measured = earlier.first().is_some_and(|outcome| matches!(outcome, CheckOutcome::Measured(_)));
            assert_eq!(over(&press, jerseys, 540).hold_ink(), was_measured, "{earlier:?}");
        }
    }
}

#[test]
fn a_typed_time_that_no_dryer_takes_is_refused() {
    let minutes = |minutes: &str| {
        let form = SettlingForm { from: "340".into(), to: "260".into(), minutes: minutes.into() };
        form.check(Uuid::nil(), Units::US).map_err(|problems| problems["minutes"])
    };
    assert_eq!(minutes("1"), Err(FormProblem::Number(NumberProblem::TooLow { least: 2.0 })));
    assert_eq!(minutes("200"), Err(FormProblem::Number(NumberProblem::TooHigh { most: 148.0 })));
    assert!(minutes("2").is_ok() && minutes("148").is_ok());
}

#[test]
fn a_settling_that_nobody_ended_is_over_after_four_hours() {
    let (mut press, _, jerseys, tunnel) = cotton_then_polyester();
    let id = press.id();
    press.record_at(200, id, Fact::Heat(HeatFact::SettlingStarted { dryer: tunnel, from: f(340.0), to: f(260.0) }));
    assert!(over(&press, jerseys, 200 + 4 * HOUR - 1).settling.is_some());
    let change = over(&press, jerseys, 200 + 4 * HOUR);
    assert_eq!((change.settling, change.cold), (None, true));
    assert!(change.hold_ink() && !change.danger.is_empty(), "it may still be set too hot");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(40))]

    #[test]
    fn the_learned_pace_is_within_the_logged_range_in_any_order(
        minutes in prop::collection::vec(2.0..60.0f64, 2..12),
    ) {
        let pace = |minutes: &[f64]| {
            let mut press = TestShop::new();
            let tunnel = dryer(&mut press, "Tunnel");
            for m in minutes {
                settled(&mut press, tunnel, 340.0, 260.0, *m);
            }
            settling_pace(&press.shop(), tunnel, Direction::Down).seconds_per_degree * 80.0 / 108.0
        };
        let found = pace(&minutes);
        let (least, most) = minutes.iter().fold((f64::MAX, f64::MIN), |(a, b), m| (a.min(*m), b.max(*m)));
        prop_assert!(found >= least - 0.01 && found <= most + 0.01);
        let mut turned = minutes.clone();
        turned.reverse();
        prop_assert!((pace(&turned) - found).abs() < 1e-9);
        let slower = minutes.iter().filter(|m| **m >= found - 1e-3).count();
        prop_assert!(2 * slower >= minutes.len(), "a middle one");
    }

    #[test]
    fn a_dryer_above_the_fabrics_limit_is_always_warned_of(
        before in 200.0..400.0f64, after in 200.0..400.0f64, fabric in prop::sample::select(Fabric::ALL.to_vec()),
    ) {
        let (mut press, first) = TestShop::with_run(&[(Size::M, 1)]);
        press.set_up(first, vec![RunField::Dryer(Some(f(before)))]);
        let next = press.order("Next", None, fabric, &[(Size::M, 1)]);
        press.set_up(next, vec![RunField::Dryer(Some(f(after)))]);
        press.pulls(first, 0, 40, 1).end_at(60, first);
        let change = over(&press, next, 90);
        let lowest = fabric_limits(&press.shop()).iter().filter(|l| l.fabric == fabric && l.origin != LimitOrigin::IfPolyester).map(|l| l.temperature).min().unwrap();
        prop_assert_eq!(!change.danger.is_empty(), f(before) >= lowest);
        prop_assert_eq!(!change.exceeded_by_set_up.is_empty(), f(after) >= lowest);
        prop_assert!(change.hold_ink() || (f(before) < lowest && f(after) < lowest));
        prop_assert_eq!(change.wait.is_some(), (f(before).milli_celsius() - f(after).milli_celsius()).abs() > 1000);
    }
}
