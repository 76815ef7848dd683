//! A shop that prints past midnight.

use crate::shop::{DAY, HOUR, TestShop, clock, today, wall};
use lastpull_core::facts::Fact;
use lastpull_core::job::Size;
use lastpull_core::plan::{RailVerdict, RunFit, closing_today, done_today};
use lastpull_core::time::DAY_TURN;
use uuid::Uuid;

/// Seconds after opening at which the clock shows midnight: sixteen hours after eight.
const MIDNIGHT: u64 = 16 * HOUR;

#[test]
fn a_closing_at_one_belongs_to_the_evening_before() {
    let mut press = TestShop::new();
    press.closes(60);
    let one = Some(wall(MIDNIGHT + HOUR));
    let closings = &press.shop().closings;
    for seconds in [0, 9 * HOUR, MIDNIGHT - 1, MIDNIGHT, MIDNIGHT + 2 * HOUR] {
        assert_eq!(closing_today(closings, clock(seconds)), one, "{seconds}");
    }
    // Thursday at five.
    assert_eq!(closing_today(closings, clock(MIDNIGHT + 4 * HOUR)), Some(wall(DAY + 9 * HOUR)));
}

#[test]
fn a_run_over_time_does_not_fit_again_when_midnight_passes() {
    let mut press = TestShop::new();
    press.ten_minutes(None);
    let fits = |seconds: u64| press.rail(seconds).runs[0].fit;
    assert_eq!(fits(0), RunFit::Fits);
    for seconds in [9 * HOUR, MIDNIGHT - 60, MIDNIGHT, MIDNIGHT + 3 * HOUR] {
        assert_eq!(fits(seconds), RunFit::MissesClosing, "{seconds}");
        assert_eq!(press.rail(seconds).verdict, RailVerdict::Closed { runs: 1 }, "{seconds}");
    }
    assert_eq!(fits(MIDNIGHT + 4 * HOUR), RunFit::Fits, "the next day begins");
}

#[test]
fn a_run_that_makes_a_closing_after_midnight_fits() {
    let mut press = TestShop::new();
    press.ten_minutes(None);
    press.closes(60);
    assert_eq!(press.rail(MIDNIGHT - 60).runs[0].fit, RunFit::Fits);
    assert_eq!(press.rail(MIDNIGHT + 60).runs[0].fit, RunFit::Fits);
    assert_eq!(press.rail(MIDNIGHT + 50 * 60).runs[0].fit, RunFit::MissesClosing);
}

#[test]
fn what_is_counted_after_midnight_is_done_the_same_evening() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 90)]);
    press.pulls(run, MIDNIGHT - 400, 40, 10).pulls(run, MIDNIGHT, 40, 10);
    let done = |seconds: u64| done_today(&press.shop(), clock(seconds)).row.pieces;
    assert_eq!(done(MIDNIGHT + 400), 20);
    assert_eq!(done(MIDNIGHT + 4 * HOUR), 0);
    assert_eq!(clock(MIDNIGHT + 400).work_day(), today());
}

#[test]
fn a_job_due_at_closing_of_a_late_day_is_due_before_midnight() {
    let mut press = TestShop::new();
    press.record(Uuid::nil(), Fact::DayClosing { day: today(), minutes: DAY_TURN - 1 });
    assert_eq!(press.shop().closings.due_on(today()), Some(23 * 60 + 59));
    assert_eq!(press.shop().closings.due_on(today().plus_days(1)), Some(17 * 60));
}
