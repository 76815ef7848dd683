//! A shop that prints past midnight.

use crate::shop::{DAY, HOUR, TestShop, clock, due, today, wall};
use lastpull_core::facts::Fact;
use lastpull_core::ids::SHOP;
use lastpull_core::job::Size;
use lastpull_core::plan::{RailVerdict, RunFit, WorkCalendar, closing_today, done_today};
use lastpull_core::time::TimeOfDay;

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
    let mut press = TestShop::with_history();
    press.ten_minutes(due(today(), 24 * 60 - 1));
    let fits = |seconds: u64| press.rail(seconds).runs[0].fit;
    assert_eq!(fits(0), RunFit::Fits);
    for seconds in [9 * HOUR, MIDNIGHT - 60, MIDNIGHT, MIDNIGHT + 3 * HOUR] {
        assert_eq!(fits(seconds), RunFit::MissesClosing, "{seconds}");
        let past_due = u32::from(seconds >= MIDNIGHT - 60);
        assert_eq!(press.rail(seconds).verdict, RailVerdict::Closed { runs: 1, past_due }, "{seconds}");
    }
    assert_eq!(fits(MIDNIGHT + 4 * HOUR), RunFit::MissesDue, "the next day begins");
    assert_eq!(press.rail(MIDNIGHT + 4 * HOUR).verdict, RailVerdict::Late { runs: 1, hardly: 0 });
}

#[test]
fn a_run_that_makes_a_closing_after_midnight_fits() {
    let mut press = TestShop::with_history();
    press.ten_minutes(None);
    press.closes(60);
    assert_eq!(press.rail(MIDNIGHT - 60).runs[0].fit, RunFit::Fits);
    assert_eq!(press.rail(MIDNIGHT + 60).runs[0].fit, RunFit::Fits);
    assert_eq!(press.rail(MIDNIGHT + 55 * 60).runs[0].fit, RunFit::Later);
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
    press.record(SHOP, Fact::DayClosing { day: today(), time: TimeOfDay::at(3, 59) });
    assert_eq!(press.shop().closings.due_on(today()), Some(TimeOfDay::LAST));
    assert_eq!(press.shop().closings.due_on(today().plus_days(1)), Some(TimeOfDay::at(17, 0)));
}

#[test]
fn work_after_midnight_is_work_of_the_evening_before() {
    let mut press = TestShop::new();
    press.closes(60);
    let shop = press.shop();
    let until = WorkCalendar::of(&shop, clock(MIDNIGHT), false);
    // An hour before closing, and then from eight in the morning.
    assert_eq!(until.after(1_800.0), wall(MIDNIGHT + 1_800));
    assert_eq!(until.after(2.0 * 3_600.0), wall(DAY + HOUR));
    assert!((until.work_until(wall(DAY + HOUR)) - 7_200.0).abs() < 1e-6);
    // A press that runs past closing works on until the working day turns, and then from eight.
    let late = WorkCalendar::of(&shop, clock(MIDNIGHT + 2 * HOUR), true);
    assert_eq!(late.after(3_600.0), wall(MIDNIGHT + 3 * HOUR));
    assert_eq!(late.after(3.0 * 3_600.0), wall(DAY + HOUR));
}
