//! The shop as it stands.

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
use crate::screen::model::{Screens, StencilLog};
use crate::units::Seconds;
use std::collections::BTreeMap;

/// Facts of newer versions that this one carries without understanding: how many of each kind.
pub type UnknownFacts = BTreeMap<String, u32>;

/// Everything the facts so far add up to. Equal journals fold to equal bytes of it.
#[derive(Clone, Debug, PartialEq, Default, Encode)]
pub struct Shop {
    /// The shop's name; empty until it has one.
    pub name: String,
    /// Who works here.
    pub crew: Vec<String>,
    /// When it closes.
    pub closings: Closings,
    /// Usual time between runs, as set by hand.
    pub set_up_allowance: Option<Seconds>,
    /// What devices are called.
    pub devices: Table<String>,
    /// Facts this version does not understand.
    pub unknown: UnknownFacts,
    pub(crate) jobs: Table<Job>,
    pub(crate) lots: Table<Lot>,
    pub(crate) runs: Table<Run>,
    pub(crate) order: Vec<RunId>,
    /// Deleted before the first fact about them.
    pub(crate) gone: Tombstones,
    /// Dryers, flash units, inks' limits, tests of a cure, and the room.
    pub heat: HeatLog,
    /// The shop's screens.
    pub screens: Screens,
    /// How stencils are exposed, and the reclaim bath.
    pub stencils: StencilLog,
    /// What failed on the press.
    pub failures: Failures,
    /// Which photos there are, of what.
    pub photos: Photos,
    /// The ink bench: components, recipes, pots.
    pub ink: InkLog,
    pub(crate) tally: Tally,
    pub(crate) last: Option<OrderKey>,
    pub(crate) facts: u64,
}

impl Shop {
    /// A job.
    pub fn job(&self, id: JobId) -> Option<&Job> {
        self.jobs.get(&id)
    }

    /// A garment lot.
    pub fn lot(&self, id: LotId) -> Option<&Lot> {
        self.lots.get(&id)
    }

    /// A run.
    pub fn run(&self, id: RunId) -> Option<&Run> {
        self.runs.get(&id)
    }

    /// All jobs, the deleted too.
    pub fn jobs(&self) -> impl Iterator<Item = (JobId, &Job)> {
        self.jobs.iter().map(|(id, job)| (*id, job))
    }

    /// All runs, the deleted too.
    pub fn runs(&self) -> impl Iterator<Item = (RunId, &Run)> {
        self.runs.iter().map(|(id, run)| (*id, run))
    }

    /// The lots of a job that were not deleted, oldest first.
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

    /// The runs of a lot that were not deleted, oldest first.
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

    /// The job a run belongs to, when every link of it is here and none was deleted.
    pub fn job_of(&self, run: RunId) -> Option<(JobId, &Job)> {
        let run = self.runs.get(&run).filter(|run| !run.deleted)?;
        let lot = self.lots.get(&run.lot?).filter(|lot| !lot.deleted)?;
        let id = lot.job?;
        self.jobs.get(&id).filter(|job| !job.deleted).map(|job| (id, job))
    }

    /// Pieces of a run still to pull.
    pub fn left_of(&self, run: RunId) -> u32 {
        let Some(run) = self.runs.get(&run) else { return 0 };
        let Some(lot) = run.lot.and_then(|lot| self.lots.get(&lot)) else { return 0 };
        let short = |(size, planned): (&Size, &u32)| planned.saturating_sub(run.progress.good_of(Some(*size)));
        lot.pieces.iter().map(short).sum::<u32>().saturating_sub(run.progress.good_of(None))
    }

    /// The order the shop means to print its runs in.
    pub fn order(&self) -> &[RunId] {
        &self.order
    }

    /// Recent work by time.
    pub fn tally(&self) -> &Tally {
        &self.tally
    }

    /// How many facts were folded.
    pub fn facts(&self) -> u64 {
        self.facts
    }

    /// The key of the last fact folded: a fact that comes before it needs a new fold.
    pub fn last_key(&self) -> Option<OrderKey> {
        self.last
    }

    /// Whether nothing was ever entered: no job and no name.
    pub fn is_new(&self) -> bool {
        self.jobs.is_empty() && self.name.is_empty()
    }
}
