//! The card of one job, with its lots and runs.

use crate::bounds::total;
use crate::failure::{FailureNotice, notices_of};
use crate::ids::{JobId, LotId, RunId};
use crate::job::{Job, Lot};
use crate::run::{Run, RunPhase};
use crate::shop::Shop;

/// A run on the card of a job.
#[derive(Clone, Debug, PartialEq)]
pub struct RunCard {
    /// Its id.
    pub id: RunId,
    /// The run.
    pub run: Run,
    /// Number of good pieces.
    pub good: u32,
    /// Number of good pieces beyond the order, in sizes that have too many.
    pub over: u32,
    /// Number of spoiled pieces.
    pub misprints: u32,
    /// Whether the run is waiting, running, stopped or done.
    pub phase: RunPhase,
    /// Its failures, oldest first.
    pub failures: Vec<FailureNotice>,
}

/// A garment lot on the card of a job.
#[derive(Clone, Debug, PartialEq)]
pub struct LotCard {
    /// Its id.
    pub id: LotId,
    /// The lot.
    pub lot: Lot,
    /// Its runs.
    pub runs: Vec<RunCard>,
}

/// The card of a job.
#[derive(Clone, Debug, PartialEq)]
pub struct JobCard {
    /// Its id.
    pub id: JobId,
    /// The job.
    pub job: Job,
    /// Its lots.
    pub lots: Vec<LotCard>,
    /// Pieces to pull, added up over all runs.
    pub planned: u32,
    /// Good pieces pulled, added up over all runs; at most `planned`.
    pub good: u32,
    /// Good pieces beyond the order, added up over all runs.
    pub over: u32,
    /// Whether every run has all its pieces.
    pub complete: bool,
}

/// The card of a job; `None` if there is no such job or it was deleted.
pub fn job_card(shop: &Shop, id: JobId) -> Option<JobCard> {
    let job = shop.job(id).filter(|job| !job.deleted)?;
    let lots: Vec<LotCard> = shop
        .lots_of(id)
        .into_iter()
        .map(|(lot_id, lot)| LotCard {
            id: lot_id,
            lot: lot.clone(),
            runs: shop.runs_of(lot_id).into_iter().map(|(run_id, run)| run_card(shop, run_id, run)).collect(),
        })
        .collect();
    let runs = || lots.iter().flat_map(|lot| lot.runs.iter().map(move |run| (lot.lot.total(), run)));
    let planned = total(runs().map(|(planned, _)| planned));
    let good = total(runs().map(|(planned, run)| planned.saturating_sub(shop.pieces_left(run.id))));
    let over = total(runs().map(|(_, run)| run.over));
    Some(JobCard { id, job: job.clone(), complete: planned > 0 && good == planned, planned, good, over, lots })
}

fn run_card(shop: &Shop, id: RunId, run: &Run) -> RunCard {
    let progress = &run.progress;
    let phase = RunPhase::of(progress);
    RunCard {
        id,
        run: run.clone(),
        good: progress.good(),
        over: shop.pieces_over(id),
        misprints: progress.misprints(),
        phase,
        failures: notices_of(shop, id),
    }
}
