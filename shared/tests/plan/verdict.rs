//! Whether each run makes it, and what the rail says of the day as a whole.

use crate::shop::{DAY, HOUR, TestShop, due, today, wall};
use lastpull_core::job::{Fabric, Size};
use lastpull_core::plan::{Rail, RailVerdict, RunFit};
use lastpull_core::time::{Due, Millis, WallTime};

const CLOSING: u64 = 9 * HOUR;

/// A rail of one run of about ten minutes after ten of set-up, as of opening.
fn one(due: Option<Due>, closes: u16) -> Rail {
    let mut press = TestShop::new();
    press.ten_minutes(due);
    press.closes(closes);
    press.rail(0)
}

fn fits(rail: &Rail) -> Vec<RunFit> {
    rail.runs.iter().map(|run| run.fit).collect()
}

/// Whether a moment is about so many minutes after opening.
fn about(moment: WallTime, minutes: f64) -> bool {
    (moment.seconds_after(wall(0)) / 60.0 - minutes).abs() < 1.5
}

fn span(time: Millis, minutes: f64) -> bool {
    (time.minutes() - minutes).abs() < 1.5
}

#[test]
fn an_empty_rail_says_so() {
    assert_eq!(TestShop::new().rail(0).verdict, RailVerdict::Empty);
}

#[test]
fn a_day_with_time_to_spare_fits_and_says_how_much() {
    let day = one(due(today(), 17 * 60), 17 * 60);
    assert_eq!(fits(&day), [RunFit::Fits]);
    let RailVerdict::Fits { finish, spare } = day.verdict else { panic!("{:?}", day.verdict) };
    assert!(about(finish, 20.0) && span(spare, 9.0 * 60.0 - 20.0), "{finish:?} {spare:?}");
}

#[test]
fn nothing_is_said_to_be_in_time_below_95_percent() {
    let mut seen = Vec::new();
    for minutes in 8 * 60 + 18..8 * 60 + 50 {
        let day = one(due(today(), 17 * 60), minutes);
        let chance = day.runs[0].chance.unwrap();
        let fit = match chance {
            chance if chance >= 0.95 => RunFit::Fits,
            chance if chance >= 0.8 => RunFit::Likely,
            chance if chance >= 0.5 => RunFit::Tight,
            _ => RunFit::MissesClosing,
        };
        assert_eq!(day.runs[0].fit, fit, "{chance}");
        let said = match day.verdict {
            RailVerdict::Fits { .. } => RunFit::Fits,
            RailVerdict::Likely { .. } => RunFit::Likely,
            RailVerdict::Tight { .. } => RunFit::Tight,
            RailVerdict::Misses { .. } => RunFit::MissesClosing,
            other => panic!("{other:?}"),
        };
        assert_eq!(said, fit, "{chance}");
        if seen.last() != Some(&fit) {
            seen.push(fit);
        }
    }
    assert_eq!(seen, [RunFit::MissesClosing, RunFit::Tight, RunFit::Likely, RunFit::Fits]);
}

#[test]
fn a_due_time_before_closing_can_be_tight_by_itself() {
    assert_eq!(fits(&one(due(today(), 8 * 60 + 22), 17 * 60)), [RunFit::Tight]);
    assert_eq!(fits(&one(due(today(), 9 * 60 + 30), 17 * 60)), [RunFit::Fits]);
}

#[test]
fn runs_that_end_past_closing_miss_it_by_the_work_that_is_too_much() {
    let mut press = TestShop::new();
    for _ in 0..3 {
        press.ten_minutes(due(today(), 17 * 60));
    }
    press.closes(8 * 60 + 35);
    let day = press.rail(0);
    // Expected after 20, 40 and 60 minutes; closing after 35. The night between is no work.
    assert_eq!(fits(&day)[1..], [RunFit::MissesClosing, RunFit::MissesClosing]);
    let RailVerdict::Misses { runs: 2, over, late: 0 } = day.verdict else { panic!("{:?}", day.verdict) };
    assert!(span(over, 26.0), "{over:?}");
}

#[test]
fn runs_past_closing_do_not_hide_those_that_are_late_for_their_own_time() {
    let mut press = TestShop::new();
    press.ten_minutes(due(today(), 8 * 60 + 5));
    press.ten_minutes(due(today(), 17 * 60));
    press.closes(8 * 60 + 30);
    let day = press.rail(0);
    assert_eq!(fits(&day), [RunFit::MissesDue, RunFit::MissesClosing]);
    assert!(matches!(day.verdict, RailVerdict::Misses { runs: 1, late: 1, .. }), "{:?}", day.verdict);
}

#[test]
fn a_run_late_for_its_client_but_not_for_closing_is_late() {
    let day = one(due(today(), 8 * 60 + 10), 17 * 60);
    assert_eq!((day.runs[0].fit, day.verdict), (RunFit::MissesDue, RailVerdict::Late { runs: 1 }));
    let both = one(due(today(), 8 * 60 + 10), 8 * 60 + 15);
    assert_eq!(fits(&both), [RunFit::MissesClosing]);
}

#[test]
fn a_run_due_tomorrow_that_runs_past_closing_comes_later_and_misses_nothing() {
    let mut press = TestShop::new();
    press.ten_minutes(due(today(), 17 * 60));
    press.ten_minutes(due(today().plus_days(1), 12 * 60));
    press.closes(8 * 60 + 38);
    let day = press.rail(0);
    assert_eq!(fits(&day), [RunFit::Fits, RunFit::Later]);
    let RailVerdict::TodayFits { finish, spare } = day.verdict else { panic!("{:?}", day.verdict) };
    assert!(about(finish, 20.0) && span(spare, 18.0), "{finish:?} {spare:?}");
    // Ten minutes of set-up and eight of pulls today; the rest from eight on.
    let tomorrow = day.runs[1].finish.unwrap().expected;
    assert!(tomorrow > wall(DAY) && tomorrow < wall(DAY + 600), "{tomorrow:?}");
}

#[test]
fn a_run_for_tomorrow_that_will_be_late_there_is_late_today_already() {
    let mut press = TestShop::new();
    press.ten_minutes(due(today().plus_days(1), 8 * 60 + 1));
    press.closes(8 * 60 + 5);
    let day = press.rail(0);
    assert_eq!((fits(&day), day.verdict), (vec![RunFit::MissesDue], RailVerdict::Late { runs: 1 }));
}

#[test]
fn a_run_without_a_due_time_is_not_due_today() {
    let day = one(None, 8 * 60 + 15);
    assert_eq!(fits(&day), [RunFit::Later]);
    let RailVerdict::NoneDue { runs: 1, finish: Some(finish) } = day.verdict else { panic!("{:?}", day.verdict) };
    assert!(finish > wall(DAY), "tomorrow: {finish:?}");
    // And it does not hide that another is.
    let mut press = TestShop::new();
    press.ten_minutes(due(today(), 17 * 60));
    press.ten_minutes(None);
    press.closes(8 * 60 + 38);
    assert!(matches!(press.rail(0).verdict, RailVerdict::TodayFits { .. }), "{:?}", press.rail(0).verdict);
}

#[test]
fn everything_is_out_only_if_no_run_stays_open() {
    let mut press = TestShop::new();
    press.ten_minutes(None);
    press.ten_minutes(due(today().plus_days(1), 600));
    // Nothing is due today, and two runs are open.
    let RailVerdict::NoneDue { runs: 2, finish: Some(finish) } = press.rail(0).verdict else {
        panic!("{:?}", press.rail(0).verdict)
    };
    assert_eq!(finish, press.rail(0).runs[1].finish.unwrap().expected, "the last of those shown");
    press.ten_minutes(due(today(), 17 * 60));
    let day = press.rail(0);
    let last = day.runs.last().unwrap().finish.unwrap().expected;
    assert!(matches!(day.verdict, RailVerdict::Fits { finish, .. } if finish == last), "{:?}", day.verdict);
}

#[test]
fn behind_a_run_of_unknown_pace_nothing_is_said_to_make_it() {
    let mut press = TestShop::new();
    press.order("Unknown", due(today(), 600), Fabric::Cotton, &[(Size::M, 10)]);
    press.ten_minutes(due(today(), 700));
    let day = press.rail(0);
    let [unknown, known] = [&day.runs[0], &day.runs[1]];
    assert_eq!(
        (unknown.fit, unknown.finish, unknown.basis, unknown.is_earliest_possible),
        (RunFit::Unknown, None, None, false)
    );
    assert_eq!((known.fit, known.is_earliest_possible), (RunFit::Depends, true));
    assert!(about(known.finish.unwrap().expected, 30.0));
    assert_eq!(day.verdict, RailVerdict::Unknown { runs: 1 });
    // What is late at the earliest is late.
    press.closes(8 * 60 + 20);
    assert_eq!(fits(&press.rail(0)), [RunFit::Unknown, RunFit::MissesClosing]);
}

#[test]
fn a_run_of_unknown_pace_after_todays_does_not_hide_that_today_fits() {
    let mut press = TestShop::new();
    press.ten_minutes(due(today(), 17 * 60));
    press.order("Next week", due(today().plus_days(7), 600), Fabric::Cotton, &[(Size::M, 10)]);
    assert!(matches!(press.rail(0).verdict, RailVerdict::TodayFits { .. }), "{:?}", press.rail(0).verdict);
}

#[test]
fn after_closing_and_on_a_day_off_the_shop_is_closed() {
    let mut press = TestShop::new();
    press.ten_minutes(due(today(), 17 * 60));
    assert!(matches!(press.rail(CLOSING - 1).verdict, RailVerdict::Misses { .. }));
    assert_eq!(press.rail(CLOSING).verdict, RailVerdict::Closed { runs: 1 });
    let saturday = press.rail(3 * DAY);
    assert_eq!((saturday.closing, saturday.verdict), (None, RailVerdict::Closed { runs: 1 }));
    // Its work is for Monday.
    let monday = saturday.runs[0].finish.unwrap().expected.seconds_after(wall(5 * DAY));
    assert!((0.0..1_500.0).contains(&monday), "{monday}");
    assert_eq!(press.rail(CLOSING + 15 * HOUR).closing, Some(wall(CLOSING + DAY)), "Thursday has its own");
}
