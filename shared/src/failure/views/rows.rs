//! Lists of failures: of a run, of a screen, of a day.

use crate::bounds::total;
use crate::collections::sort_by_key;
use crate::facts::{FailureKind, Remedy, ScreenState};
use crate::failure::pieces::uninspected_pieces;
use crate::failure::{Failure, suspects_of};
use crate::ids::{RunId, Subject};
use crate::run::Stop;
use crate::shop::Shop;
use crate::time::{Millis, WallClock, WallTime};

/// A row of a list of failures.
#[derive(Clone, Debug, PartialEq)]
pub struct FailureRow {
    /// Its id, which is also the subject of its photos.
    pub id: Subject,
    /// The run.
    pub run: Option<RunId>,
    /// When it was found, as wall time.
    pub at: WallTime,
    /// What failed.
    pub kind: Option<FailureKind>,
    /// Label of the screen, if known.
    pub screen: Option<String>,
    /// The remedy that was chosen.
    pub remedy: Option<Remedy>,
    /// How long the press was stopped for it.
    pub downtime: Millis,
    /// Number of suspect pieces that nobody has inspected.
    pub suspect: u32,
    /// Number of pieces inspected and good.
    pub good: u32,
    /// Number of pieces it spoiled.
    pub spoiled: u32,
    /// Whether something about it is still to do.
    pub open: bool,
}

/// The failures of a run at wall time `now`, oldest first.
pub fn failures_of(shop: &Shop, run: RunId, now: WallTime) -> Vec<FailureRow> {
    shop.failures.of_run(run).into_iter().map(|(id, failure)| row(shop, id, failure, now)).collect()
}

/// The failures of a screen at wall time `now`, the latest first.
pub fn failures_of_screen(shop: &Shop, screen: Subject, now: WallTime) -> Vec<FailureRow> {
    let latest_first = shop.failures.of_screen(screen).into_iter().rev();
    latest_first.map(|(id, failure)| row(shop, id, failure, now)).collect()
}

pub(crate) fn row(shop: &Shop, id: Subject, failure: &Failure, now: WallTime) -> FailureRow {
    FailureRow {
        id,
        run: failure.run,
        at: failure.at,
        kind: failure.kind,
        screen: failure.screen.and_then(|screen| shop.screens.get(screen)).map(|screen| screen.label.clone()),
        remedy: failure.remedy,
        // A finished stop keeps its length, even if the device's clock is slow.
        downtime: stop_of(shop, failure).map_or(Millis::ZERO, |stop| stop.overlap(failure.at, stop.to.unwrap_or(now))),
        suspect: uninspected_pieces(shop, failure),
        good: failure.good(),
        spoiled: failure.spoiled(),
        open: is_open(shop, failure),
    }
}

/// The stop in which a failure was found: the press was stopped at that moment, or stopped because of it.
/// Before the failure, the stop had another cause.
pub(crate) fn stop_of<'a>(shop: &'a Shop, failure: &Failure) -> Option<&'a Stop> {
    let stops = shop.run(failure.run?)?.progress.stops();
    let holds =
        |stop: &&Stop| stop.cause.is_some() && stop.from <= failure.at && stop.to.is_none_or(|to| to >= failure.at);
    stops.iter().rfind(holds)
}

/// Whether something is still to do: no remedy, pieces to inspect, the press stopped for it, or a
/// replacement that cannot print yet.
pub(crate) fn is_open(shop: &Shop, failure: &Failure) -> bool {
    let standing = stop_of(shop, failure).is_some_and(|stop| stop.to.is_none());
    let replacement = failure.replacement.and_then(|screen| shop.screens.live(screen));
    let waits = failure.remedy == Some(Remedy::BurnAgain)
        && replacement.is_some_and(|screen| match screen.state {
            ScreenState::Clean | ScreenState::Coated | ScreenState::Exposed => true,
            ScreenState::Ready
            | ScreenState::OnPress
            | ScreenState::ToReclaim
            | ScreenState::InBath
            | ScreenState::Failed => false,
        });
    failure.remedy.is_none() || uninspected_pieces(shop, failure) > 0 || standing || waits
}

/// Today's failures, and those of open jobs, the oldest first.
pub(super) fn failures_at_hand(shop: &Shop, clock: WallClock) -> Vec<(Subject, &Failure)> {
    let today = clock.work_day();
    let mut rows = shop.failures.since(|at| clock.work_day_of(at) < today);
    rows.extend(shop.runs_of_open_jobs().into_iter().flat_map(|(run, _)| shop.failures.of_run(run)));
    sort_by_key(&mut rows, |(id, failure)| (failure.at, *id));
    rows.dedup_by_key(|(id, _)| *id);
    rows
}

/// What failures cost on one day.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub struct DayFailures {
    /// Number of failures that day.
    pub count: u32,
    /// Number of failures of any day with something still to do, in open jobs.
    pub open: u32,
    /// How long the press was stopped for that day's failures; a stop shared by two counts once.
    pub downtime: Millis,
    /// Number of suspect pieces of open jobs.
    pub suspect: u32,
    /// Number of pieces that day's failures spoiled.
    pub spoiled: u32,
}

/// What failures cost today.
pub fn failures_today(shop: &Shop, clock: WallClock) -> DayFailures {
    let today = clock.work_day();
    let mut day = DayFailures::default();
    let mut stops: Vec<(RunId, WallTime)> = Vec::new();
    let mut runs: Vec<RunId> = Vec::new();
    for (id, failure) in failures_at_hand(shop, clock) {
        // Once its job is finished, nobody waits for the inspection any more.
        let job_open = failure.run.and_then(|run| shop.job_of(run)).is_some_and(|(_, job)| job.is_open());
        day.open += u32::from(job_open && is_open(shop, failure));
        runs.extend(failure.run.filter(|run| job_open && !runs.contains(run)));
        if clock.work_day_of(failure.at) != today {
            continue;
        }
        let row = row(shop, id, failure, clock.now);
        day.count += 1;
        day.spoiled = day.spoiled.saturating_add(row.spoiled);
        let stop = failure.run.zip(stop_of(shop, failure)).map(|(run, stop)| (run, stop.from));
        if stop.is_some_and(|stop| !stops.contains(&stop)) {
            stops.extend(stop);
            day.downtime += row.downtime;
        }
    }
    day.suspect = total(runs.into_iter().flat_map(|run| suspects_of(shop, run).into_values()));
    day
}
