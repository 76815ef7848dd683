//! What the runs say of the day as a whole.

use super::fit::RunFit;
use super::rail_run::RailRun;
use crate::collections::sort_by_key;
use crate::plan::WorkCalendar;
use crate::run::Likelihood;
use crate::time::{Millis, WallClock, WallTime};

/// When the last of some runs is expected to be finished.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct LastFinish {
    /// When it is out of the dryer.
    pub at: WallTime,
    /// Whether the time in the dryer of some of the runs is unknown: of these, printed is all that is said.
    pub ends_at_press: bool,
}

/// Verdict on the whole rail. How likely is what is the bins of [`Likelihood`].
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub enum RailVerdict {
    /// There is nothing to print.
    #[default]
    Empty,
    /// Every open run surely makes closing, and each is surely in time for its job.
    Fits {
        /// When the last of it is finished.
        finish: LastFinish,
        /// Time left until closing.
        spare: Millis,
    },
    /// Everything due today does; other runs stay open.
    TodayFits {
        /// When the last of today's is finished.
        finish: LastFinish,
        /// Time left until closing.
        spare: Millis,
    },
    /// Everything due today is likely in time.
    Likely {
        /// When the last of it is expected to be finished.
        finish: LastFinish,
    },
    /// Everything due today is likely in time, but for what may be or not.
    Tight {
        /// When the last of it is expected to be finished.
        finish: LastFinish,
    },
    /// Some runs are hardly in time, though none is surely late.
    Hardly {
        /// Runs due today that hardly make closing.
        closing: u32,
        /// Runs that are hardly in time for their own due time.
        due: u32,
    },
    /// Nothing is due today.
    NoneDue {
        /// Number of open runs.
        runs: u32,
        /// When the last of them is expected to be finished; `None` if that is not known of all.
        finish: Option<LastFinish>,
    },
    /// Some runs due today surely do not make closing.
    Misses {
        /// Number of runs.
        runs: u32,
        /// The work that is expected to be too much for today: of the last of them past closing.
        over: Millis,
        /// Runs that are late for their own due time besides.
        late: u32,
        /// Runs that are hardly in time besides.
        hardly: u32,
    },
    /// Some runs are surely late for their own due time, though none for closing.
    Late {
        /// Number of runs.
        runs: u32,
        /// Runs that are hardly in time besides.
        hardly: u32,
    },
    /// Some runs have no known pace.
    Unknown {
        /// Number of runs.
        runs: u32,
    },
    /// The shop is closed today, or has closed.
    Closed {
        /// Number of open runs.
        runs: u32,
        /// Number of jobs among these that are past due.
        past_due: u32,
    },
}

/// What the runs say of the day as a whole.
pub(super) fn verdict(
    runs: &[RailRun],
    clock: WallClock,
    closing: Option<WallTime>,
    calendar: &WorkCalendar<'_>,
) -> RailVerdict {
    let count = |fit: RunFit| runs.iter().filter(|run| run.fit == fit).count() as u32;
    let is_today = |run: &RailRun| run.due.is_some_and(|due| due.day <= clock.work_day());
    let open = runs.len() as u32;
    if open == 0 {
        return RailVerdict::Empty;
    }
    let Some(closing) = closing.filter(|closing| *closing > clock.now) else {
        return RailVerdict::Closed { runs: open, past_due: jobs_past_due(runs, clock) };
    };
    let last = |is_meant: &dyn Fn(&RailRun) -> bool| last_finish(runs.iter().filter(|run| is_meant(run)));
    let late = count(RunFit::MissesDue);
    let [hardly_closing, hardly_due] = [RunFit::HardlyClosing, RunFit::HardlyDue].map(count);
    let hardly = hardly_closing + hardly_due;
    if let Some(last) = last(&|run| run.fit == RunFit::MissesClosing) {
        // In hours of work: the night between is no work.
        let over = calendar.work_until(last.at) - calendar.work_until(closing);
        let over = if over > 0.0 { Millis::from_seconds(over) } else { last.at.since(closing) };
        return RailVerdict::Misses { runs: count(RunFit::MissesClosing), over, late, hardly };
    }
    if late > 0 {
        return RailVerdict::Late { runs: late, hardly };
    }
    if hardly > 0 {
        return RailVerdict::Hardly { closing: hardly_closing, due: hardly_due };
    }
    let unknown = |runs: &[RailRun]| runs.iter().filter(|run| run.fit == RunFit::Unknown).count() as u32;
    let Some(last_today) = runs.iter().rposition(is_today) else {
        return RailVerdict::NoneDue { runs: open, finish: last(&|_| true).filter(|_| unknown(runs) == 0) };
    };
    // An unknown pace matters only if the run is due today or comes before one that is.
    if unknown(&runs[..=last_today]) > 0 {
        return RailVerdict::Unknown { runs: unknown(&runs[..=last_today]) };
    }
    let finish = last(&is_today).unwrap_or(LastFinish { at: clock.now, ends_at_press: false });
    let worst = |fit: RunFit| runs.iter().any(|run| is_today(run) && run.fit == fit);
    if worst(RunFit::Tight) {
        return RailVerdict::Tight { finish };
    }
    if worst(RunFit::Likely) {
        return RailVerdict::Likely { finish };
    }
    let is_sure = |run: &RailRun| run.chance.is_some_and(|chance| chance.likelihood == Likelihood::Sure);
    match last(&|_| true) {
        Some(all) if runs.iter().all(|run| run.fit == RunFit::Fits && is_sure(run)) => {
            RailVerdict::Fits { finish: all, spare: closing.since(all.at) }
        }
        _ => RailVerdict::TodayFits { finish, spare: closing.since(finish.at) },
    }
}

/// When the last of these is expected to be finished; `None` if that is known of none.
fn last_finish<'a>(runs: impl Iterator<Item = &'a RailRun> + Clone) -> Option<LastFinish> {
    let ends_at_press = runs.clone().any(|run| run.ends_at_press);
    let at = runs.filter_map(|run| run.finish).map(|finish| finish.expected).max()?;
    Some(LastFinish { at, ends_at_press })
}

fn jobs_past_due(runs: &[RailRun], clock: WallClock) -> u32 {
    let is_past = |run: &&RailRun| run.due.is_some_and(|due| clock.due_moment(due) <= clock.now);
    let mut jobs: Vec<_> = runs.iter().filter(is_past).map(|run| run.job).collect();
    sort_by_key(&mut jobs, |job| *job);
    jobs.dedup();
    jobs.len() as u32
}
