//! One-line notices of failures, for other pages.

use super::rows::{failures_at_hand, is_open, stop_of};
use crate::facts::FailureKind;
use crate::failure::Failure;
use crate::failure::pieces::uninspected_pieces;
use crate::ids::{RunId, Subject};
use crate::plan::open_runs;
use crate::shop::Shop;
use crate::time::{Millis, WallClock, WallTime};

/// A failure in one line.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct FailureNotice {
    /// Its id.
    pub id: Subject,
    /// The title of the job.
    pub title: String,
    /// What failed.
    pub kind: Option<FailureKind>,
    /// Label of the screen, if known.
    pub screen: Option<String>,
    /// Wall time at which it was found.
    pub at: WallTime,
    /// How long the press was stopped for it; `None` while it is stopped.
    pub stopped_for: Option<Millis>,
    /// Whether something about it is still to do.
    pub open: bool,
    /// Number of suspect pieces that nobody has inspected.
    pub suspect: u32,
    /// Number of pieces it spoiled.
    pub spoiled: u32,
}

fn notice(shop: &Shop, id: Subject, failure: &Failure) -> FailureNotice {
    let job = failure.run.and_then(|run| shop.job_of(run)).map(|(_, job)| job);
    FailureNotice {
        id,
        title: job.map(|job| job.title.clone()).unwrap_or_default(),
        kind: failure.kind,
        screen: failure.screen.and_then(|screen| shop.screens.get(screen)).map(|screen| screen.label.clone()),
        at: failure.at,
        stopped_for: stop_of(shop, failure)
            .map_or(Some(Millis::ZERO), |stop| stop.to.map(|to| stop.overlap(failure.at, to))),
        open: is_open(shop, failure),
        suspect: uninspected_pieces(shop, failure),
        spoiled: failure.spoiled(),
    }
}

/// The failures of a run, oldest first.
pub fn notices_of(shop: &Shop, run: RunId) -> Vec<FailureNotice> {
    shop.failures.of_run(run).into_iter().map(|(id, failure)| notice(shop, id, failure)).collect()
}

/// The failure of a run that matters most at the press: one for which the press is stopped, otherwise the
/// latest with something still to do.
pub fn notice_at_press(shop: &Shop, run: RunId) -> Option<FailureNotice> {
    let mut rows = notices_of(shop, run);
    rows.retain(|row| row.open);
    let standing = rows.iter().rposition(|row| row.stopped_for.is_none());
    standing.map(|at| rows.swap_remove(at)).or_else(|| rows.pop())
}

/// The failures for which the press is stopped now, the latest of each run.
pub fn failures_stopping_press(shop: &Shop) -> Vec<FailureNotice> {
    let at_press = open_runs(shop).into_iter().filter_map(|run| notice_at_press(shop, run));
    at_press.filter(|row| row.stopped_for.is_none()).collect()
}

/// Today's failures, and earlier failures of open jobs with something still to do; oldest first.
pub fn notices_today(shop: &Shop, clock: WallClock) -> Vec<FailureNotice> {
    let today = clock.work_day();
    let job_open =
        |failure: &Failure| failure.run.and_then(|run| shop.job_of(run)).is_some_and(|(_, job)| job.is_open());
    let wanted = |(_, failure): &(Subject, &Failure)| {
        clock.work_day_of(failure.at) == today || (job_open(failure) && is_open(shop, failure))
    };
    failures_at_hand(shop, clock).into_iter().filter(wanted).map(|(id, failure)| notice(shop, id, failure)).collect()
}
