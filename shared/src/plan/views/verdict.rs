//! What the runs say of the day as a whole.

use super::fit::RunFit;
use super::rail_run::RailRun;
use crate::plan::WorkCalendar;
use crate::run::SURE;
use crate::time::{Millis, WallClock, WallTime};

/// Verdict on the whole rail.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub enum RailVerdict {
    /// There is nothing to print.
    #[default]
    Empty,
    /// Every open run makes closing, and each is in time for its job, with a probability of at least 0.95.
    Fits {
        /// When the last of it is out of the dryer.
        finish: WallTime,
        /// Time left until closing.
        spare: Millis,
    },
    /// Everything due today does; other runs stay open.
    TodayFits {
        /// When the last of today's is out of the dryer.
        finish: WallTime,
        /// Time left until closing.
        spare: Millis,
    },
    /// Everything due today makes closing with a probability of at least 0.8.
    Likely {
        /// When the last of it is expected out of the dryer.
        finish: WallTime,
    },
    /// Everything due today is expected to make closing, with a lower probability.
    Tight {
        /// When the last of it is expected out of the dryer.
        finish: WallTime,
    },
    /// Nothing is due today.
    NoneDue {
        /// Number of open runs.
        runs: u32,
        /// When the last of them is expected out of the dryer; `None` if that is not known of all.
        finish: Option<WallTime>,
    },
    /// Some runs due today do not make closing.
    Misses {
        /// Number of runs.
        runs: u32,
        /// The work that is too much for today: of the last of them past closing.
        over: Millis,
        /// Runs that are late for their own due time besides.
        late: u32,
    },
    /// Some runs are late for their own due time, though not for closing.
    Late {
        /// Number of runs.
        runs: u32,
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
        return RailVerdict::Closed { runs: open };
    };
    let last = |is_meant: &dyn Fn(&RailRun) -> bool| {
        runs.iter().filter(|run| is_meant(run)).filter_map(|run| run.finish).map(|finish| finish.expected).max()
    };
    let late = count(RunFit::MissesDue);
    if let Some(last) = last(&|run| run.fit == RunFit::MissesClosing) {
        // In hours of work: the night between is no work.
        let over = calendar.work_until(last) - calendar.work_until(closing);
        let over = if over > 0.0 { Millis::from_seconds(over) } else { last.since(closing) };
        return RailVerdict::Misses { runs: count(RunFit::MissesClosing), over, late };
    }
    if late > 0 {
        return RailVerdict::Late { runs: late };
    }
    let unknown = |runs: &[RailRun]| runs.iter().filter(|run| run.fit == RunFit::Unknown).count() as u32;
    let Some(last_today) = runs.iter().rposition(is_today) else {
        return RailVerdict::NoneDue { runs: open, finish: last(&|_| true).filter(|_| unknown(runs) == 0) };
    };
    // An unknown pace matters only if the run is due today or comes before one that is.
    if unknown(&runs[..=last_today]) > 0 {
        return RailVerdict::Unknown { runs: unknown(&runs[..=last_today]) };
    }
    let finish = last(&is_today).unwrap_or(clock.now);
    let worst = |fit: RunFit| runs.iter().any(|run| is_today(run) && run.fit == fit);
    if worst(RunFit::Tight) {
        return RailVerdict::Tight { finish };
    }
    if worst(RunFit::Likely) {
        return RailVerdict::Likely { finish };
    }
    match last(&|_| true) {
        Some(all) if runs.iter().all(|run| run.chance.is_some_and(|chance| chance >= SURE)) && unknown(runs) == 0 => {
            RailVerdict::Fits { finish: all, spare: closing.since(all) }
        }
        _ => RailVerdict::TodayFits { finish, spare: closing.since(finish) },
    }
}
