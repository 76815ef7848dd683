//! What belongs to what, and which jobs and runs are current: what the day, the press and a finished job ask about a
//! shop of ten years without going through it.
//!
//! Everything here follows from the jobs, lots and runs, and is kept beside them at each fact, because deriving it when
//! the shop is opened would read all of them. So the same facts make the same links, whether folded at once or from a
//! checkpoint on.
//!
//! # Decisions
//!
//! - **What ten years cost** (2026-11-29). Opening, counting and drawing must cost the same after ten years as after
//!   one. So a table of a checkpoint stays as it was stored, and a row is decoded when somebody asks for it
//!   (`collections/table/stored.rs`); opening is a copy of bytes and a checksum over them, since damage in a row
//!   would otherwise be found too late. A second checkpoint for finished jobs was the other way: every question would
//!   then have had to say which of the two it means. What the day, the press, the ink shelf and a form that opens ask
//!   of all jobs, lots, runs, failures, pots or cure tests goes through `shop/links.rs` and the like
//!   (`failure/model.rs`, `ink/model/pot_lists.rs`, `ink/model/stock.rs`, `heat/model/tests_by_ink.rs`), which the fold keeps at each fact
//!   and the checkpoint stores: what belongs to what (`collections/groups.rs`), what is open, and the newest, of all
//!   or of each kind (`time/newest.rs` and beside it). The newest say when one that they left out may be the answer,
//!   as where all of them were deleted; then everything is gone through, so that an answer never depends on how many
//!   they hold. What is found by the id of a name is compared by its name. Pages that list everything read
//!   everything, but work out only the rows on the screen. What still grows with the years, and is felt by nobody: the
//!   list of jobs is sorted and searched as a whole, a component's page lists all its pours, a run's trials are looked
//!   for among all trials, and what was on the press before a run of long ago among all runs. `history/timing.rs` in
//!   the tests measures it.
//!   `shared/tests/history/` counts the rows that are read or changed, and compares the answers of a folded and an
//!   opened shop.

use crate::codec::Encode;
use crate::collections::{Groups, Table};
use crate::facts::{Fabric, Location};
use crate::ids::{JobId, LotId, RunId};
use crate::job::model::{Job, Lot, garment_id};
use crate::run::model::{Run, RunKind};
use crate::time::{Newest, NewestOfKinds, WallTime};
use clients::Clients;
use uuid::Uuid;

/// Most runs of a kind to expect a pace from: a dozen are learned from, and some of them have too few gaps. Our own.
const MOST_ENDED: usize = 24;
/// Most things kept of which the newest is asked for: some may be deleted. Our own.
const MOST_ASKED_ONE_OF: usize = 8;

/// What belongs to what, and which jobs and runs are current. Deleted things are among them, but where it says so.
#[derive(Clone, Debug, PartialEq, Default, Encode)]
pub(crate) struct Links {
    lots_of_job: Groups,
    runs_of_lot: Groups,
    /// The jobs that are neither finished nor deleted.
    open_jobs: Table<()>,
    /// The runs on the press, without deleted ones.
    on_press: Table<()>,
    /// The latest finished jobs.
    pub finished_jobs: Newest,
    /// The lots that were made last.
    pub new_lots: Newest,
    /// The runs that were on the press last; one that never was counts from when it was made.
    pub recent_runs: Newest,
    /// The latest runs of each kind that are off the press, without deleted ones: what a run's pace is expected from.
    pub ended_runs: NewestOfKinds<RunKind>,
    /// The latest runs of each fabric and location, without deleted ones and those whose lot has not arrived: what a new run
    /// starts from.
    pub runs_by_place: NewestOfKinds<(Fabric, Location)>,
    /// The latest lots of each garment by [`garment_id`], without deleted ones and those without a name.
    lots_of_garment: Groups<Newest>,
    /// The clients of the jobs that are not deleted.
    pub clients: Clients,
}

/// What the links need to know of a job. The default is a job that is not there.
#[derive(Clone, PartialEq, Default)]
pub(super) struct LinkedJob {
    is_open: bool,
    finished: Option<WallTime>,
    /// Its client, if it has one and is not deleted.
    client: Option<String>,
}

impl LinkedJob {
    pub(super) fn of(job: &Job) -> Self {
        let client = Some(&job.client).filter(|client| !job.deleted && !client.trim().is_empty());
        Self { is_open: job.is_open(), finished: job.finished, client: client.cloned() }
    }
}

/// What the links need to know of a lot. The default is a lot that is not there.
#[derive(Clone, Copy, PartialEq, Default)]
pub(super) struct LinkedLot {
    job: Option<JobId>,
    fabric: Option<Fabric>,
    created: Option<WallTime>,
    /// What it is found by, if it is not deleted.
    garment: Option<Uuid>,
}

impl LinkedLot {
    pub(super) fn of(lot: &Lot) -> Self {
        let garment = garment_id(&lot.garment).filter(|_| !lot.deleted);
        Self { job: lot.job, fabric: Some(lot.fabric), created: Some(lot.created), garment }
    }
}

/// What the links need to know of a run. The default is a run that is not there.
#[derive(Clone, Copy, PartialEq, Default)]
pub(super) struct LinkedRun {
    lot: Option<LotId>,
    last: Option<WallTime>,
    is_on_press: bool,
    /// Where it prints, if it is not deleted.
    location: Option<Location>,
    /// Its kind, but for the fabric, if it is off the press.
    ended: Option<RunKind>,
}

impl LinkedRun {
    pub(super) fn of(run: &Run) -> Self {
        let progress = &run.progress;
        Self {
            lot: run.lot,
            last: Some(progress.last_activity.unwrap_or(run.created)),
            is_on_press: !run.deleted && progress.is_on_press(),
            location: Some(run.location).filter(|_| !run.deleted),
            ended: progress.ended_summary().filter(|_| !run.deleted).map(|_| RunKind::of(run, None)),
        }
    }

    /// Its kind on this fabric and when it was last active, if it is off the press.
    fn ended_on(self, fabric: Option<Fabric>) -> Option<(RunKind, WallTime)> {
        Some((RunKind { fabric, ..self.ended? }, self.last?))
    }

    /// This fabric, where it prints, and when it was last active.
    fn placed_on(self, fabric: Option<Fabric>) -> Option<((Fabric, Location), WallTime)> {
        Some(((fabric?, self.location?), self.last?))
    }
}

impl Links {
    /// The lots of a job, in no particular order.
    pub(crate) fn lots_of(&self, job: JobId) -> &[LotId] {
        self.lots_of_job.of(job)
    }

    /// The runs of a lot, in no particular order.
    pub(crate) fn runs_of(&self, lot: LotId) -> &[RunId] {
        self.runs_of_lot.of(lot)
    }

    /// The runs of a job's lots, in no particular order.
    pub(crate) fn runs_of_job(&self, job: JobId) -> impl Iterator<Item = RunId> {
        self.lots_of(job).iter().flat_map(|lot| self.runs_of(*lot)).copied()
    }

    /// The jobs that are neither finished nor deleted, in the order of their ids.
    pub(crate) fn open_jobs(&self) -> impl Iterator<Item = JobId> {
        self.open_jobs.keys().copied()
    }

    /// The runs on the press that are not deleted, in the order of their ids.
    pub(crate) fn on_press(&self) -> impl Iterator<Item = RunId> {
        self.on_press.keys().copied()
    }

    /// The lots whose garment has this [id](garment_id), without deleted ones; `None` if there never was one.
    pub(crate) fn lots_of_garment(&self, garment: Uuid) -> Option<&Newest> {
        self.lots_of_garment.get(garment)
    }

    /// Number of rows that were decoded or changed. Tests count them.
    pub(super) fn rows_in_memory(&self) -> usize {
        let groups = self.lots_of_job.rows_in_memory() + self.runs_of_lot.rows_in_memory();
        let sets = self.open_jobs.rows_in_memory() + self.on_press.rows_in_memory();
        groups + sets + self.lots_of_garment.rows_in_memory() + self.clients.rows_in_memory()
    }

    pub(super) fn job_changed(&mut self, id: JobId, before: LinkedJob, after: LinkedJob) {
        set_member(&mut self.open_jobs, id, before.is_open, after.is_open);
        self.finished_jobs.replace(id, before.finished, after.finished);
        self.clients.replace(before.client.as_deref(), after.client.as_deref());
    }

    pub(super) fn lot_changed(&mut self, id: LotId, before: LinkedLot, after: LinkedLot, runs: &Table<Run>) {
        if before == after {
            return;
        }
        self.lots_of_job.replace(id, before.job, after.job);
        self.new_lots.replace(id, before.created, after.created);
        let [was, is] = [before, after].map(|lot| lot.garment.zip(lot.created));
        self.lots_of_garment.change(was, is, |lots, was, is| lots.replace_with_limit(MOST_ASKED_ONE_OF, id, was, is));
        if before.fabric != after.fabric {
            let of_lot = self.runs_of_lot.of(id).iter().filter_map(|id| Some((*id, runs.get(id)?)));
            for (id, run) in of_lot {
                let run = LinkedRun::of(run);
                let [was, is] = [before, after].map(|lot| run.ended_on(lot.fabric));
                self.ended_runs.replace_with_limit(MOST_ENDED, id, was, is);
                let [was, is] = [before, after].map(|lot| run.placed_on(lot.fabric));
                self.runs_by_place.replace_with_limit(MOST_ASKED_ONE_OF, id, was, is);
            }
        }
    }

    pub(super) fn run_changed(&mut self, id: RunId, before: LinkedRun, after: LinkedRun, lots: &Table<Lot>) {
        if before == after {
            return;
        }
        self.runs_of_lot.replace(id, before.lot, after.lot);
        set_member(&mut self.on_press, id, before.is_on_press, after.is_on_press);
        self.recent_runs.replace(id, before.last, after.last);
        let fabric_of = |run: LinkedRun| Some(lots.get(&run.lot?)?.fabric);
        let is = fabric_of(after);
        let was = if before.lot == after.lot { is } else { fabric_of(before) };
        self.ended_runs.replace_with_limit(MOST_ENDED, id, before.ended_on(was), after.ended_on(is));
        self.runs_by_place.replace_with_limit(MOST_ASKED_ONE_OF, id, before.placed_on(was), after.placed_on(is));
    }
}

/// Adds an id to a set or removes it, as its membership changed.
fn set_member(ids: &mut Table<()>, id: Uuid, before: bool, after: bool) {
    match (before, after) {
        (false, true) => ids.insert(id, ()),
        (true, false) => drop(ids.remove(&id)),
        (true, true) | (false, false) => {}
    }
}

mod clients;
#[cfg(test)]
mod tests;
