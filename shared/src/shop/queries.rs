//! What is asked of the shop as a whole: its jobs, lots and runs by id and by what they belong to.

use super::Shop;
use crate::collections::sort_by_key;
use crate::facts::Size;
use crate::ids::{JobId, LotId, RunId};
use crate::job::model::{Job, Lot};
use crate::journal::OrderKey;
use crate::plan::model::Tally;
use crate::run::model::Run;

impl Shop {
    /// The job with this id.
    pub fn job(&self, id: JobId) -> Option<&Job> {
        self.jobs.get(&id)
    }

    /// The garment lot with this id.
    pub fn lot(&self, id: LotId) -> Option<&Lot> {
        self.lots.get(&id)
    }

    /// The run with this id.
    pub fn run(&self, id: RunId) -> Option<&Run> {
        self.runs.get(&id)
    }

    /// All jobs, including deleted ones.
    pub fn jobs(&self) -> impl Iterator<Item = (JobId, &Job)> {
        self.jobs.iter().map(|(id, job)| (*id, job))
    }

    /// All runs, including deleted ones.
    pub fn runs(&self) -> impl Iterator<Item = (RunId, &Run)> {
        self.runs.iter().map(|(id, run)| (*id, run))
    }

    /// The lots of a job that are not deleted, the oldest first.
    pub fn lots_of(&self, job: JobId) -> Vec<(LotId, &Lot)> {
        let mut lots: Vec<_> = self
            .lots
            .iter()
            .filter(|(_, lot)| lot.job == Some(job) && !lot.deleted)
            .map(|(id, lot)| (*id, lot))
            .collect();
        sort_by_key(&mut lots, |(id, lot)| (lot.rank, *id));
        lots
    }

    /// The runs of a lot that are not deleted, the oldest first.
    pub fn runs_of(&self, lot: LotId) -> Vec<(RunId, &Run)> {
        let mut runs: Vec<_> = self
            .runs
            .iter()
            .filter(|(_, run)| run.lot == Some(lot) && !run.deleted)
            .map(|(id, run)| (*id, run))
            .collect();
        sort_by_key(&mut runs, |(id, run)| (run.rank, *id));
        runs
    }

    /// The job a run belongs to. `None` if run, lot or job is missing or deleted.
    pub fn job_of(&self, run: RunId) -> Option<(JobId, &Job)> {
        let run = self.runs.get(&run).filter(|run| !run.deleted)?;
        let lot = self.lots.get(&run.lot?).filter(|lot| !lot.deleted)?;
        let id = lot.job?;
        self.jobs.get(&id).filter(|job| !job.deleted).map(|job| (id, job))
    }

    /// Number of pieces a run still has to pull; 0 if the run or its lot is unknown.
    pub fn pieces_left(&self, run: RunId) -> u32 {
        let Some(run) = self.runs.get(&run) else { return 0 };
        let Some(lot) = run.lot.and_then(|lot| self.lots.get(&lot)) else { return 0 };
        let short = |(size, planned): (&Size, &u32)| planned.saturating_sub(run.progress.good_of(Some(*size)));
        lot.pieces.iter().map(short).sum::<u32>().saturating_sub(run.progress.good_of(None))
    }

    /// The order in which the shop means to print its runs.
    pub fn order(&self) -> &[RunId] {
        &self.order
    }

    /// Recent work by time.
    pub fn tally(&self) -> &Tally {
        &self.tally
    }

    /// Number of facts folded.
    pub fn fact_count(&self) -> u64 {
        self.fact_count
    }

    /// The key of the last fact folded. A fact that sorts before it needs a new fold.
    pub fn last_key(&self) -> Option<OrderKey> {
        self.last
    }

    /// Whether nothing was ever entered: no job and no shop name.
    pub fn is_new(&self) -> bool {
        self.jobs.is_empty() && self.name.is_empty()
    }
}
