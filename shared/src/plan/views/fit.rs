//! Whether a run of the day is in time.

use crate::run::SURE;
use crate::time::{Estimate, WallTime};

/// Whether a run is out of the dryer in time: before closing and before it is due, if that is today; else before it is
/// due.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RunFit {
    /// In time with a probability of at least 0.95.
    Fits,
    /// In time with a probability of at least 0.8.
    Likely,
    /// In time with a probability of at least one half.
    Tight,
    /// Late for its own due time.
    MissesDue,
    /// Not out of the dryer by closing.
    MissesClosing,
    /// Runs past closing, but is not due today.
    Later,
    /// It would be in time, but a run before it has no known pace.
    Depends,
    /// Its pace is unknown.
    Unknown,
}

/// From which probability a run is likely in time.
const LIKELY: f64 = 0.8;

/// What decides whether a run is in time.
pub(super) struct RunTimes {
    pub(super) finish: Option<Estimate<WallTime>>,
    pub(super) closing: Option<WallTime>,
    pub(super) due: Option<WallTime>,
    /// Whether it is due today or was before. A job without a due time is not.
    pub(super) is_today: bool,
}

/// Whether a run is in time. `chance_by` is the probability that it is out of the dryer by a moment.
pub(super) fn run_fit(times: &RunTimes, unknown_before: bool, chance_by: Option<&dyn Fn(WallTime) -> f64>) -> RunFit {
    let RunTimes { finish, closing, due, is_today } = *times;
    let (Some(finish), Some(chance_by)) = (finish, chance_by) else { return RunFit::Unknown };
    let is_past = |moment: Option<WallTime>| moment.is_some_and(|moment| finish.expected > moment);
    if is_today && is_past(closing) {
        return RunFit::MissesClosing;
    }
    if is_past(due) {
        return RunFit::MissesDue;
    }
    if unknown_before {
        return RunFit::Depends;
    }
    let by = |moment: Option<WallTime>| moment.map_or(1.0, chance_by);
    // What is not due today need not make closing.
    let (chance, in_time) = match is_today {
        true => (by(closing).min(by(due)), RunFit::Fits),
        false if is_past(closing) => (by(due), RunFit::Later),
        false if due.is_some() => (by(due), RunFit::Fits),
        false => (by(closing), RunFit::Fits),
    };
    match chance {
        chance if chance >= SURE => in_time,
        chance if chance >= LIKELY => RunFit::Likely,
        _ => RunFit::Tight,
    }
}
