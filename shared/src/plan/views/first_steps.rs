//! What a new shop does first, one step after another.

use crate::ids::{JobId, RunId};
use crate::shop::Shop;

/// The next of the first three steps of a new shop.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FirstStep {
    /// Enter a job.
    Job,
    /// Add garments and a run to this job.
    Run(JobId),
    /// Count the first piece of this run.
    Count(RunId),
}

/// The next of the first steps, from what the shop has; `None` once a piece was counted. Finished and deleted jobs do not
/// count: with no other, the steps start again.
pub fn first_step(shop: &Shop) -> Option<FirstStep> {
    if shop.recent_runs().any(|(_, _, run)| !run.deleted && run.progress.good() > 0) {
        return None;
    }
    let run = shop.runs_of_open_jobs().first().map(|(run, _)| FirstStep::Count(*run));
    let job = || shop.open_jobs().next().map(|(job, _)| FirstStep::Run(job));
    Some(run.or_else(job).unwrap_or(FirstStep::Job))
}
