//! The folded state of the shop.

use crate::codec::Encode;
use crate::collections::{Table, sort_by_key};
use crate::deletion::Tombstones;
use crate::facts::Size;
use crate::failure::model::Failures;
use crate::heat::model::HeatLog;
use crate::ids::{JobId, LotId, RunId};
use crate::ink::model::InkLog;
use crate::job::model::{Job, Lot};
use crate::journal::OrderKey;
use crate::photo::model::Photos;
use crate::plan::model::{Closings, Tally};
use crate::run::model::Run;
use crate::screen::model::{ExposureLog, Screens};
use crate::units::Seconds;
use std::collections::BTreeMap;

/// Number of facts of each kind that only a newer version understands.
pub type UnknownFacts = BTreeMap<String, u32>;

/// Everything the facts so far add up to. Equal journals fold to equal bytes.
#[derive(Clone, Debug, PartialEq, Default, Encode)]
pub struct Shop {
    /// The shop's name; empty until it has one.
    pub name: String,
    /// Names of the crew.
    pub crew: Vec<String>,
    /// Closing times.
    pub closings: Closings,
    /// Time between runs, as entered by the shop.
    pub set_up_allowance: Option<Seconds>,
    /// Names of devices.
    pub devices: Table<String>,
    /// Facts this version does not understand.
    pub unknown: UnknownFacts,
    pub(crate) jobs: Table<Job>,
    pub(crate) lots: Table<Lot>,
    pub(crate) runs: Table<Run>,
    pub(crate) order: Vec<RunId>,
    /// Ids that were deleted before the first fact about them.
    pub(crate) deleted_early: Tombstones,
    /// Dryers, flash units, ink sheets, fabric limits, cure tests, trials and climate readings.
    pub heat: HeatLog,
    /// The screens.
    pub screens: Screens,
    /// Exposures of stencils, and the reclaim bath.
    pub exposure_log: ExposureLog,
    /// Failures on the press.
    pub failures: Failures,
    /// Photos and their subjects.
    pub photos: Photos,
    /// Ink components, recipes and pots.
    pub ink: InkLog,
    pub(crate) tally: Tally,
    pub(crate) last: Option<OrderKey>,
    pub(crate) fact_count: u64,
}

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

    /// Number of good pieces of a run beyond its order, in all sizes that have too many; 0 if the run or its lot is
    /// unknown.
    pub fn pieces_over(&self, run: RunId) -> u32 {
        let Some(of) = self.runs.get(&run) else { return 0 };
        let Some(lot) = of.lot.and_then(|lot| self.lots.get(&lot)) else { return 0 };
        (of.progress.good() + self.pieces_left(run)).saturating_sub(lot.total())
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
