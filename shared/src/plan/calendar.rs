//! The shop's working time: which moment it is after some hours of work, nights and days off left out.

use super::{Tally, closing_on, closing_today};
use crate::collections::sort_by_key;
use crate::shop::Shop;
use crate::time::{DAY_TURN, Day, Millis, TimeOfDay, WallClock, WallTime};
use std::cell::OnceCell;

/// The shop's working time from now on.
///
/// Today it lasts until closing, on each later open day from the opening time to closing. A press that runs after
/// closing or on a day off works on until the working day turns, at four in the morning.
#[derive(Debug)]
pub struct WorkCalendar<'a> {
    shop: &'a Shop,
    clock: WallClock,
    /// Until when there is work today; `None` if there is none.
    today: Option<WallTime>,
    /// When work begins.
    opening: OnceCell<TimeOfDay>,
}

/// A stretch of work.
#[derive(Clone, Copy)]
struct WorkSpan {
    from: WallTime,
    to: WallTime,
}

/// Opening time where the shop's own days do not tell: eight in the morning. Common practice, no source.
const DEFAULT_OPENING: TimeOfDay = TimeOfDay::at(8, 0);
/// Fewest days to learn the opening time from, and most: the latest.
const OPENING_DAYS: std::ops::RangeInclusive<usize> = 3..=20;
/// Days that are looked ahead. Work beyond them is set one after another without a break.
const DAYS_AHEAD: u64 = 400;

impl<'a> WorkCalendar<'a> {
    /// The working time as of the clock. `press_runs`: whether a run is on the press now.
    pub fn of(shop: &'a Shop, clock: WallClock, press_runs: bool) -> Self {
        let closing = closing_today(&shop.closings, clock);
        let turn = || press_runs.then(|| clock.moment(clock.work_day().plus_days(1), DAY_TURN));
        let today = closing.filter(|closing| *closing > clock.now).or_else(turn);
        Self { shop, clock, today, opening: OnceCell::new() }
    }

    /// Until when there is work today; `None` if there is none.
    pub fn today_until(&self) -> Option<WallTime> {
        self.today
    }

    /// The moment after so many seconds of work from now on; no earlier than now.
    pub fn after(&self, seconds: f64) -> WallTime {
        let now = self.clock.now;
        let mut left = Millis::from_seconds(seconds.max(0.0));
        let mut end = now;
        for WorkSpan { from, to } in self.spans() {
            let span = to.since(from);
            if left <= span {
                return from + left;
            }
            left = left - span;
            end = to;
        }
        end + left
    }

    /// Seconds of working time from now to a moment; for a moment that is past, the seconds since then, negative.
    pub fn work_until(&self, moment: WallTime) -> f64 {
        if moment <= self.clock.now {
            return moment.seconds_after(self.clock.now);
        }
        let before = self.spans().take_while(|span| span.from < moment);
        let worked = before.map(|span| span.to.min(moment).since(span.from));
        worked.sum::<Millis>().seconds()
    }

    /// Stretches of work, the next first.
    fn spans(&self) -> impl Iterator<Item = WorkSpan> + '_ {
        let today = self.clock.work_day();
        let later = (1..=DAYS_AHEAD).filter_map(move |days| self.day(today.plus_days(days)));
        self.today.map(|to| WorkSpan { from: self.clock.now, to }).into_iter().chain(later)
    }

    /// The working time of a later day; `None` on a day off.
    fn day(&self, day: Day) -> Option<WorkSpan> {
        let closing = closing_on(&self.shop.closings, day, self.clock)?;
        let opening = *self.opening.get_or_init(|| opening_time(self.shop.tally(), self.clock));
        let opening = self.clock.moment(day.plus_days(u64::from(opening < DAY_TURN)), opening);
        (closing > opening).then_some(WorkSpan { from: opening, to: closing })
    }
}

/// When the shop's working days begin: the middle one of the quarters of an hour in which
/// the first piece of a day was pulled.
fn opening_time(tally: &Tally, clock: WallClock) -> TimeOfDay {
    let mut first = tally.first_quarters(clock, *OPENING_DAYS.end());
    if first.len() < *OPENING_DAYS.start() {
        return DEFAULT_OPENING;
    }
    sort_by_key(&mut first, |time| *time);
    first[first.len() / 2]
}
