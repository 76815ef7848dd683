//! Which runs are open, in which order, and the time to set up between two of them.

use crate::collections::{sort_by, sort_by_key};
use crate::ids::RunId;
use crate::run::Run;
use crate::shop::Shop;
use crate::time::{Day, Millis, TimeOfDay, WallTime};
use crate::units::Seconds;

/// Default seconds between runs. Common practice, no source.
pub(crate) const DEFAULT_SET_UP: f64 = 600.0;

/// Open runs in printing order: those on the press, then as the shop ordered them, then by due time.
pub(crate) fn open_runs(shop: &Shop) -> Vec<RunId> {
    let is_open = |id: RunId, run: &Run| {
        let waits = run.progress.ended().is_none() || shop.pieces_left(id) > 0;
        waits && (shop.pieces_left(id) > 0 || run.progress.is_on_press())
    };
    let mut open = shop.runs_of_open_jobs();
    open.retain(|(id, run)| is_open(*id, run));
    let rank = |id: RunId| shop.order().iter().position(|other| *other == id).unwrap_or(usize::MAX);
    let due = |id: RunId| shop.job_of(id).and_then(|(_, job)| job.due);
    let day =
        |id: RunId| due(id).map_or((Day::new(chrono::NaiveDate::MAX), TimeOfDay::MIDNIGHT), |due| (due.day, due.time));
    let place = |id: RunId, run: &Run| (!run.progress.is_on_press(), rank(id), day(id), run.rank, id);
    let mut places: Vec<_> = open.into_iter().map(|(id, run)| place(id, run)).collect();
    sort_by(&mut places, Ord::cmp);
    places.into_iter().map(|(.., id)| id).collect()
}

/// Longest time between two runs that is taken for set-up.
const MAX_SET_UP: Millis = Millis::from_minutes(90);

/// Most runs looked at for the time between them, the latest. Our own: a week or two of a busy press.
const MOST_RUNS: usize = 60;

/// Time between two runs on the press.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct SetUpTime {
    /// In seconds.
    pub(crate) seconds: f64,
    /// Whether it was learned from the shop's own days.
    pub(crate) is_learned: bool,
}

/// The time between runs: the mean of the last ten changes from one run's end to the next one's first pull, among the
/// latest sixty runs; else what the shop entered, else a default.
pub(crate) fn set_up_time(shop: &Shop) -> SetUpTime {
    // Not those that were entered since and wait.
    let started = shop.recent_runs().map(|(.., run)| run).filter(|run| run.progress.started().is_some());
    let latest: Vec<&Run> = started.take(MOST_RUNS).collect();
    let mut ends: Vec<WallTime> = latest.iter().filter_map(|run| run.progress.ended()).collect();
    sort_by_key(&mut ends, |end| *end);
    let mut starts: Vec<WallTime> = latest
        .iter()
        .filter_map(|run| run.progress.pulls().first().map(|pull| pull.at).or(run.progress.started()))
        .collect();
    sort_by_key(&mut starts, |start| *start);
    let changes: Vec<f64> = starts
        .iter()
        .rev()
        .filter_map(|start| {
            let end = ends[..ends.partition_point(|end| end <= start)].last()?;
            let change = start.since(*end);
            (change < MAX_SET_UP).then(|| change.seconds())
        })
        .take(10)
        .collect();
    if changes.len() >= 3 {
        SetUpTime { seconds: changes.iter().sum::<f64>() / changes.len() as f64, is_learned: true }
    } else {
        SetUpTime { seconds: shop.set_up_allowance.map_or(DEFAULT_SET_UP, Seconds::seconds), is_learned: false }
    }
}
