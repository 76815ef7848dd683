//! What the count shows of the pace: when the run is out of the dryer, whether that is in time, and its chart.

use super::pace_chart::{ChartMarks, PaceChart, pace_chart};
use crate::ids::RunId;
use crate::plan::{WorkCalendar, closing_today};
use crate::run::{Chance, Forecast, ForecastBasis, fan, forecast};
use crate::shop::Shop;
use crate::time::{Estimate, Millis, WallClock, WallTime};

/// What a run must be in time for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum GoalKind {
    /// Today's closing.
    Closing,
    /// The job's due time.
    Due,
}

/// The moment that a run must be out of the dryer by.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Goal {
    /// What it is.
    pub kind: GoalKind,
    /// When.
    pub at: WallTime,
    /// Whether it has passed already.
    pub is_past: bool,
    /// The chance of being in time.
    pub chance: Chance,
    /// Pieces per hour needed for it, without a stop; `None` if there is no time left.
    pub needed_per_hour: Option<f64>,
    /// Whether the time in the dryer is unknown, so that the chance is that of being printed by then.
    pub ends_at_press: bool,
}

/// Pace and forecast compared with due time and closing.
#[derive(Clone, Debug, PartialEq)]
pub struct PaceView {
    /// What the forecast is based on.
    pub basis: ForecastBasis,
    /// Pieces per hour expected of the pieces left.
    pub per_hour: f64,
    /// Seconds per piece expected of them.
    pub seconds: f64,
    /// Work left, and the dryer after it: the median.
    pub time_left: Millis,
    /// When the last piece is out of the dryer.
    pub finish: Estimate<WallTime>,
    /// Whether the time in the dryer is unknown and not in any of these times.
    pub ends_at_press: bool,
    /// The due time or closing, whichever comes first; `None` without either. For a run that is expected to go on past
    /// closing and is due on another day: its due time.
    pub goal: Option<Goal>,
    /// Median number of ordered good pieces finished by closing, without those over in a size; `None` without a closing time.
    pub by_closing: Option<u32>,
}

/// What the count shows of the pace.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct RunPace {
    /// Pace and forecast; `None` if no pace is known.
    pub pace: Option<PaceView>,
    /// The chart; `None` before the run has started.
    pub chart: Option<PaceChart>,
    /// Pieces ordered.
    pub planned: u32,
    /// Pieces pulled beyond the order.
    pub over: u32,
    /// When it started.
    pub started: Option<WallTime>,
    /// Time of work.
    pub active: Millis,
    /// Time stopped.
    pub stopped: Millis,
}

/// The pace of a run as of the clock, from what is stored. Default if the run is unknown.
pub fn run_pace(shop: &Shop, id: RunId, clock: WallClock) -> RunPace {
    let Some(run) = shop.run(id) else { return RunPace::default() };
    let progress = &run.progress;
    let planned = run.lot.and_then(|lot| shop.lot(lot)).map_or(0, crate::job::Lot::total);
    let left = shop.pieces_left(id);
    let now = clock.now;
    let calendar = WorkCalendar::of(shop, clock, progress.is_on_press());
    let forecast = forecast(shop, id, now).filter(|_| progress.ended.is_none());
    let closing = closing_today(&shop.closings, clock);
    let due = shop.job_of(id).and_then(|(_, job)| job.due).map(|due| clock.due_moment(due));
    let pace = forecast.as_ref().map(|forecast| {
        let press_time = forecast.press_time();
        let finish = forecast.finish(press_time, &calendar);
        let seconds = forecast.seconds_each();
        PaceView {
            basis: forecast.basis,
            per_hour: 3600.0 / seconds.max(1e-3),
            seconds,
            time_left: Millis::from_seconds(press_time.expected + forecast.in_dryer),
            finish,
            ends_at_press: forecast.ends_at_press,
            goal: run_goal(forecast, finish, closing, due, &calendar, clock),
            by_closing: closing
                .map(|closing| planned.saturating_sub(left) + forecast.pieces_by(closing, &calendar).min(left)),
        }
    });
    let fan = fan(progress, forecast.as_ref(), clock);
    let marks = ChartMarks { closing, due, work_until: calendar.today_until(), planned, good: progress.good() };
    RunPace {
        pace,
        chart: pace_chart(&fan, progress.started, marks, clock),
        planned,
        over: shop.pieces_over(id),
        started: progress.started,
        active: progress.active(now),
        stopped: progress.stopped(now.min(progress.ended.unwrap_or(now))),
    }
}

/// What a run must be in time for, and its chance; `None` if the shop is closed and the job has no due time.
pub(crate) fn run_goal(
    forecast: &Forecast,
    finish: Estimate<WallTime>,
    closing: Option<WallTime>,
    due: Option<WallTime>,
    calendar: &WorkCalendar<'_>,
    clock: WallClock,
) -> Option<Goal> {
    let due_counts = |due: &WallTime| closing.is_none_or(|closing| *due <= closing || finish.expected > closing);
    let (kind, at) = match due.filter(due_counts) {
        Some(due) => (GoalKind::Due, due),
        None => (GoalKind::Closing, closing?),
    };
    let needed_per_hour = forecast.needed_per_hour(at, calendar);
    // Without time left it is late whatever the pace.
    let is_only_guess = forecast.is_only_guess() && needed_per_hour.is_some();
    Some(Goal {
        kind,
        at,
        is_past: at <= clock.now,
        chance: Chance::of(forecast.chance_by(at, calendar), is_only_guess),
        needed_per_hour,
        ends_at_press: forecast.ends_at_press,
    })
}
