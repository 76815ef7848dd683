//! Whether each run makes it, and what the rail says of the day as a whole.

use crate::shop::{DAY, HOUR, TestShop, due, minutes, near, seconds, today, wall};
use lastpull_core::job::{Fabric, Size};
use lastpull_core::plan::{Rail, RailVerdict, RunFit};
use lastpull_core::time::Due;

const CLOSING: u64 = 9 * HOUR;

/// A rail of one run of ten minutes, as of opening.
fn one(due: Option<Due>, closes: u16) -> Rail {
    let mut press = TestShop::new();
    press.ten_minutes(due);
    press.closes(closes);
    press.rail(0)
}

#[test]
fn an_empty_rail_says_so() {
    assert_eq!(TestShop::new().rail(0).verdict, RailVerdict::Empty);
}

#[test]
fn a_day_with_time_to_spare_fits_and_says_how_much() {
    let day = one(due(today(), 17 * 60), 17 * 60);
    assert_eq!(day.runs[0].fit, RunFit::Fits);
    assert_eq!(day.verdict, RailVerdict::Fits { finish: wall(1200), spare: seconds(CLOSING - 1200) });
}

#[test]
fn a_chance_below_90_percent_of_making_closing_is_tight() {
    // A minute to spare with a standard error of 241.206 / 1.28155 = 188.2 s: Φ(0.319).
    let day = one(None, 8 * 60 + 21);
    assert!((day.runs[0].chance.unwrap() - 0.625_06).abs() < 1e-4, "{:?}", day.runs[0].chance);
    assert_eq!((day.runs[0].fit, day.verdict), (RunFit::Tight, RailVerdict::Tight { finish: wall(1200) }));
    // 242 s to spare is just past one in ten.
    assert_eq!(one(None, 8 * 60 + 24).runs[0].fit, RunFit::Tight);
    assert_eq!(one(None, 8 * 60 + 25).runs[0].fit, RunFit::Fits);
}

#[test]
fn the_chance_of_closing_at_the_expected_finish_is_even_on_the_rail_too() {
    let day = one(None, 8 * 60 + 20);
    assert!(near(day.runs[0].chance.unwrap(), 0.5));
}

#[test]
fn a_due_time_before_closing_can_be_tight_by_itself() {
    assert_eq!(one(due(today(), 8 * 60 + 24), 17 * 60).runs[0].fit, RunFit::Tight, "240 s to spare of 241.2");
    assert_eq!(one(due(today(), 8 * 60 + 25), 17 * 60).runs[0].fit, RunFit::Fits);
}

#[test]
fn runs_that_end_past_closing_miss_it_by_the_last_of_them() {
    let mut press = TestShop::new();
    for _ in 0..3 {
        press.ten_minutes(due(today(), 17 * 60));
    }
    press.closes(8 * 60 + 25);
    // Expected at 1200, 2400 and 3600; closing at 1500.
    let day = press.rail(0);
    assert_eq!(
        day.runs.iter().map(|run| run.fit).collect::<Vec<_>>(),
        [RunFit::Fits, RunFit::MissesClosing, RunFit::MissesClosing]
    );
    assert_eq!(day.verdict, RailVerdict::Misses { runs: 2, over: minutes(35) });
}

#[test]
fn a_run_late_for_its_client_but_not_for_closing_is_late() {
    let day = one(due(today(), 8 * 60 + 10), 17 * 60);
    assert_eq!((day.runs[0].fit, day.verdict), (RunFit::MissesDue, RailVerdict::Late { runs: 1 }));
    let both = one(due(today(), 8 * 60 + 10), 8 * 60 + 15);
    assert_eq!(
        (both.runs[0].fit, both.verdict),
        (RunFit::MissesClosing, RailVerdict::Misses { runs: 1, over: minutes(5) })
    );
}

#[test]
fn a_run_due_tomorrow_that_runs_past_closing_comes_later_and_misses_nothing() {
    let mut press = TestShop::new();
    press.ten_minutes(due(today(), 17 * 60));
    press.ten_minutes(due(today().plus_days(1), 12 * 60));
    press.closes(8 * 60 + 30);
    let day = press.rail(0);
    assert_eq!(day.runs.iter().map(|run| run.fit).collect::<Vec<_>>(), [RunFit::Fits, RunFit::Later]);
    assert_eq!(day.verdict, RailVerdict::Fits { finish: wall(1200), spare: minutes(10) });
}

#[test]
fn a_run_without_a_due_time_is_meant_for_today() {
    assert_eq!(one(None, 8 * 60 + 15).verdict, RailVerdict::Misses { runs: 1, over: minutes(5) });
}

#[test]
fn behind_a_run_of_unknown_pace_finishes_are_the_earliest_possible() {
    let mut press = TestShop::new();
    press.order("Unknown", due(today(), 600), Fabric::Cotton, &[(Size::M, 10)]);
    press.ten_minutes(due(today(), 700));
    let day = press.rail(0);
    let [unknown, known] = [&day.runs[0], &day.runs[1]];
    assert_eq!(
        (unknown.fit, unknown.finish, unknown.basis, unknown.is_earliest_possible),
        (RunFit::Unknown, None, None, false)
    );
    assert_eq!(
        (known.fit, known.finish.unwrap().expected, known.is_earliest_possible),
        (RunFit::Fits, wall(1800), true)
    );
    assert_eq!(day.verdict, RailVerdict::Unknown { runs: 1 });
}

#[test]
fn a_run_of_unknown_pace_after_todays_does_not_hide_that_today_fits() {
    let mut press = TestShop::new();
    press.ten_minutes(due(today(), 17 * 60));
    press.order("Next week", due(today().plus_days(7), 600), Fabric::Cotton, &[(Size::M, 10)]);
    assert_eq!(press.rail(0).verdict, RailVerdict::Fits { finish: wall(1200), spare: seconds(CLOSING - 1200) });
}

#[test]
fn after_closing_and_on_a_day_off_the_shop_is_closed() {
    let mut press = TestShop::new();
    press.ten_minutes(None);
    assert!(matches!(press.rail(CLOSING - 1).verdict, RailVerdict::Misses { .. }));
    assert_eq!(press.rail(CLOSING).verdict, RailVerdict::Closed { runs: 1 });
    let saturday = press.rail(3 * DAY);
    assert_eq!((saturday.closing, saturday.verdict), (None, RailVerdict::Closed { runs: 1 }));
    assert_eq!(press.rail(CLOSING + 15 * HOUR).closing, Some(wall(CLOSING + DAY)), "Thursday has its own");
}
