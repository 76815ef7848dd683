//! What is asked of the shop as a whole: its jobs, lots and runs by id and by what they belong to.

use super::Shop;
use crate::collections::sort_by_key;
use crate::facts::Size;
use crate::ids::{JobId, LotId, RunId};
use crate::job::model::{Job, Lot};
use crate::journal::OrderKey;
use crate::plan::model::Tally;
use crate::run::model::Run;
use crate::time::{Millis, WallTime};

/// How far the clocks of phones differ that set them by themselves, generously. Our own choice.
const CLOCKS_DIFFER: Millis = Millis::from_minutes(2);

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
        let all = self.links.lots_of(job).iter().filter_map(|id| Some((*id, self.lots.get(id)?)));
        let mut lots: Vec<_> = all.filter(|(_, lot)| !lot.deleted).collect();
        sort_by_key(&mut lots, |(id, lot)| (lot.rank, *id));
        lots
    }

    /// The runs of a lot that are not deleted, the oldest first.
    pub fn runs_of(&self, lot: LotId) -> Vec<(RunId, &Run)> {
        let all = self.links.runs_of(lot).iter().filter_map(|id| Some((*id, self.runs.get(id)?)));
        let mut runs: Vec<_> = all.filter(|(_, run)| !run.deleted).collect();
        sort_by_key(&mut runs, |(id, run)| (run.rank, *id));
        runs
    }

    /// The jobs that are neither finished nor deleted, in the order of their ids.
    pub fn open_jobs(&self) -> impl Iterator<Item = (JobId, &Job)> {
        self.links.open_jobs().filter_map(|id| Some((id, self.jobs.get(&id)?)))
    }

    /// The runs of these jobs, in the order of their ids, without those of deleted lots and deleted ones.
    pub(crate) fn runs_of_open_jobs(&self) -> Vec<(RunId, &Run)> {
        let lots = self.links.open_jobs().flat_map(|job| self.lots_of(job));
        let mut runs: Vec<_> = lots.flat_map(|(lot, _)| self.runs_of(lot)).collect();
        sort_by_key(&mut runs, |(id, _)| *id);
        runs
    }

    /// Whether a run is on the press.
    pub fn is_printing(&self) -> bool {
        self.links.on_press().next().is_some()
    }

    /// The latest runs that were on the press, the latest first, each with its last activity there; one that never was
    /// counts from when it was made. Deleted ones are among them. At most four hundred: [`Self::is_recent`] says of a moment
    /// whether all since then are here.
    pub(crate) fn recent_runs(&self) -> impl Iterator<Item = (WallTime, RunId, &Run)> {
        self.links.recent_runs.iter().filter_map(|(at, id)| Some((at, id, self.runs.get(&id)?)))
    }

    /// Whether every run that was active at or after this moment is among the [recent ones](Self::recent_runs); `None` is
    /// any moment.
    pub(crate) fn is_recent(&self, at: Option<WallTime>) -> bool {
        at.map_or(self.links.recent_runs.is_complete(), |at| self.links.recent_runs.is_complete_since(at))
    }

    /// The lots that were made last, the latest first, without deleted ones: at most four hundred.
    pub(crate) fn new_lots(&self) -> impl Iterator<Item = &Lot> {
        self.links.new_lots.iter().filter_map(|(_, id)| self.lots.get(&id)).filter(|lot| !lot.deleted)
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

    /// Number of good pieces of a run beyond its order, in all sizes that have too many; 0 if the run or its lot is
    /// unknown.
    pub fn pieces_over(&self, run: RunId) -> u32 {
        let Some(of) = self.runs.get(&run) else { return 0 };
        let Some(lot) = of.lot.and_then(|lot| self.lots.get(&lot)) else { return 0 };
        of.progress.good().saturating_add(self.pieces_left(run)).saturating_sub(lot.total())
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

    /// How far this device's clock is behind the latest time that any fact here was recorded at or after; `None` if it is
    /// not, or by less than phones differ. Then this clock was set back, or one that recorded facts was ahead.
    pub fn clock_behind(&self, now: WallTime) -> Option<Millis> {
        let (stamp, ..) = self.last?;
        Some(stamp.wall.since(now)).filter(|behind| *behind >= CLOCKS_DIFFER)
    }

    /// The latest time that any fact was recorded at or after.
    pub fn latest_time(&self) -> Option<WallTime> {
        self.last.map(|(stamp, ..)| stamp.wall)
    }

    /// Number of jobs, lots, runs, failures, pots, cure tests and what belongs to them that somebody read or changed since
    /// the shop was opened from a checkpoint. Tests count them.
    pub fn rows_in_memory(&self) -> usize {
        let tables = self.jobs.rows_in_memory() + self.lots.rows_in_memory() + self.runs.rows_in_memory();
        let subjects = self.failures.rows_in_memory() + self.ink.rows_in_memory() + self.heat.rows_in_memory();
        tables + subjects + self.links.rows_in_memory()
    }

    /// Whether nothing was ever entered: no job and no shop name.
    pub fn is_new(&self) -> bool {
        self.jobs.is_empty() && self.name.is_empty()
    }
}
