//! Summary of a run that has left the press.

use crate::facts::{MisprintCause, Size};
use crate::failure::{FailureNotice, notices_of, run_pieces, suspects_of};
use crate::ids::RunId;
use crate::shop::Shop;
use crate::time::{Millis, WallTime};
use std::ops::Range;

/// The summary of a run.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct RunSummary {
    /// Good pieces.
    pub good: u32,
    /// Pieces counted as good that were not inspected since a failure.
    pub suspect: u32,
    /// Suspect pieces by size.
    pub suspects: Vec<(Option<Size>, u32)>,
    /// Spoiled pieces.
    pub spoiled: u32,
    /// Pieces ordered.
    pub planned: u32,
    /// Good pieces short of the order, by size: garments still to print.
    pub short: Vec<(Option<Size>, u32)>,
    /// Good pieces beyond the order, by size.
    pub over: Vec<(Option<Size>, u32)>,
    /// Spoiled garments, by size: garments to replace.
    pub replace: Vec<(Option<Size>, u32)>,
    /// Spoiled pieces by cause.
    pub causes: Vec<(MisprintCause, u32)>,
    /// From start to end; `None` if it never started.
    pub span: Option<Range<WallTime>>,
    /// Time of work.
    pub active: Millis,
    /// Time stopped.
    pub stopped: Millis,
    /// Pieces per hour.
    pub per_hour: Option<f64>,
    /// Number of skipped checks.
    pub skipped: u32,
    /// Failures, the oldest first.
    pub failures: Vec<FailureNotice>,
}

/// The summary of a run. Default if the run is unknown.
pub fn run_summary(shop: &Shop, id: RunId) -> RunSummary {
    let Some(run) = shop.run(id) else { return RunSummary::default() };
    let progress = &run.progress;
    let pieces = run.lot.and_then(|lot| shop.lot(lot)).map(|lot| lot.pieces.clone()).unwrap_or_default();
    let end = progress.ended.or(progress.last_activity).unwrap_or_default();
    let mut spoiled: std::collections::BTreeMap<Option<Size>, u32> = std::collections::BTreeMap::new();
    for (size, _) in progress.misprints.keys() {
        spoiled.insert(*size, progress.misprints_of(*size));
    }
    let heaps = run_pieces(shop, id);
    RunSummary {
        good: heaps.good,
        suspect: heaps.suspect,
        suspects: suspects_of(shop, id).into_iter().collect(),
        spoiled: heaps.spoiled,
        planned: pieces.values().sum(),
        short: pieces
            .iter()
            .map(|(size, planned)| (Some(*size), planned.saturating_sub(progress.good_of(Some(*size)))))
            .filter(|(_, short)| *short > 0)
            .collect(),
        over: progress
            .good
            .keys()
            .filter(|size| size.is_some())
            .map(|size| {
                let planned = size.and_then(|size| pieces.get(&size)).copied().unwrap_or(0);
                (*size, progress.good_of(*size).saturating_sub(planned))
            })
            .filter(|(_, over)| *over > 0)
            .collect(),
        replace: spoiled.into_iter().filter(|(_, pieces)| *pieces > 0).collect(),
        causes: progress.misprint_causes().into_iter().collect(),
        span: progress.started.map(|start| start..end),
        active: progress.active(end),
        stopped: progress.stopped(end),
        per_hour: progress.pace().map(|pace| pace.per_hour()),
        skipped: crate::run::check_list(shop, id).skipped() as u32,
        failures: notices_of(shop, id),
    }
}
