//! Whether a run of the day is in time.

use crate::run::{Chance, Likelihood, SURE};
use crate::time::{Estimate, WallTime};

/// Whether a run is out of the dryer in time: before closing and before it is due, if that is today; else before it is
/// due. How likely is what is the bins of [`Likelihood`].
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RunFit {
    /// Surely in time.
    Fits,
    /// Likely in time.
    Likely,
    /// It may be in time or not.
    Tight,
    /// Hardly in time for its own due time.
    HardlyDue,
    /// Hardly out of the dryer by closing.
    HardlyClosing,
    /// Surely late for its own due time.
    MissesDue,
    /// Surely not out of the dryer by closing.
    MissesClosing,
    /// Runs past closing, but is not due today.
    Later,
    /// It would be in time, but a run before it has no known pace.
    Depends,
    /// Its pace is unknown.
    Unknown,
}

/// What decides whether a run is in time.
pub(super) struct RunTimes {
    pub(super) finish: Option<Estimate<WallTime>>,
    pub(super) closing: Option<WallTime>,
    pub(super) due: Option<WallTime>,
    /// Whether it is due today or was before. A job without a due time is not.
    pub(super) is_today: bool,
}

/// Whether a run is in time. `chance_by` is the chance that it is out of the dryer by a moment.
pub(super) fn run_fit(
    times: &RunTimes,
    unknown_before: bool,
    chance_by: Option<&dyn Fn(WallTime) -> Chance>,
) -> RunFit {
    let RunTimes { finish, closing, due, is_today } = *times;
    let (Some(finish), Some(chance_by)) = (finish, chance_by) else { return RunFit::Unknown };
    let by = |moment: Option<WallTime>| moment.map_or(Likelihood::Sure, |moment| chance_by(moment).likelihood);
    let goes_on = closing.map_or(due.is_none(), |closing| finish.expected > closing);
    // What is not due today need not make closing.
    let (for_closing, for_due) = match is_today {
        true => (by(closing), by(due)),
        // This says nothing of how sure it is, so a guess is enough.
        false if goes_on && due.is_none_or(|due| chance_by(due).probability >= SURE) => {
            return if unknown_before { RunFit::Depends } else { RunFit::Later };
        }
        false if goes_on || due.is_some() => (Likelihood::Sure, by(due)),
        false => (by(closing), Likelihood::Sure),
    };
    match for_closing.max(for_due) {
        Likelihood::No if for_closing == Likelihood::No => RunFit::MissesClosing,
        Likelihood::No => RunFit::MissesDue,
        Likelihood::Unlikely if for_closing == Likelihood::Unlikely => RunFit::HardlyClosing,
        Likelihood::Unlikely => RunFit::HardlyDue,
        _ if unknown_before => RunFit::Depends,
        Likelihood::Even => RunFit::Tight,
        Likelihood::Likely => RunFit::Likely,
        Likelihood::Sure => RunFit::Fits,
    }
}
