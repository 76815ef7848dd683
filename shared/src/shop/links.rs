//! What belongs to what, and which jobs and runs are current: what the day, the press and a finished job ask about a
//! shop of ten years without going through it.
//!
//! Everything here follows from the jobs, lots and runs, and is kept beside them at each fact, because deriving it when
//! the shop is opened would read all of them. So the same facts make the same links, whether folded at once or from a
//! checkpoint on.

use crate::codec::Encode;
use crate::collections::Table;
use crate::facts::Fabric;
use crate::ids::{JobId, LotId, RunId};
use crate::job::model::{Job, Lot};
use crate::run::model::{EndedRuns, Run, RunKind};
use crate::time::{Newest, WallTime};
use uuid::Uuid;

/// What belongs to what, and which jobs and runs are current. Deleted things are among them, but where it says so.
#[derive(Clone, Debug, PartialEq, Default, Encode)]
pub(crate) struct Links {
    lots_of_job: Table<Vec<LotId>>,
    runs_of_lot: Table<Vec<RunId>>,
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
    /// The latest runs that are off the press, without deleted ones.
    pub ended_runs: EndedRuns,
}

/// What the links need to know of a job. The default is a job that is not there.
#[derive(Clone, Copy, PartialEq, Default)]
pub(super) struct JobStanding {
    is_open: bool,
    finished: Option<WallTime>,
}

impl JobStanding {
    pub(super) fn of(job: &Job) -> Self {
        Self { is_open: job.is_open(), finished: job.finished }
    }
}

/// What the links need to know of a lot. The default is a lot that is not there.
#[derive(Clone, Copy, PartialEq, Default)]
pub(super) struct LotStanding {
    job: Option<JobId>,
    fabric: Option<Fabric>,
    created: Option<WallTime>,
}

impl LotStanding {
    pub(super) fn of(lot: &Lot) -> Self {
        Self { job: lot.job, fabric: Some(lot.fabric), created: Some(lot.created) }
    }
}

/// What the links need to know of a run. The default is a run that is not there.
#[derive(Clone, Copy, PartialEq, Default)]
pub(super) struct RunStanding {
    lot: Option<LotId>,
    last: Option<WallTime>,
    is_on_press: bool,
    /// Its kind, but for the fabric, if it is off the press.
    ended: Option<RunKind>,
}

impl RunStanding {
    pub(super) fn of(run: &Run) -> Self {
        let progress = &run.progress;
        Self {
            lot: run.lot,
            last: Some(progress.last_activity.unwrap_or(run.created)),
            is_on_press: !run.deleted && progress.is_on_press(),
            ended: progress.ended_summary().filter(|_| !run.deleted).map(|_| RunKind::of(run, None)),
        }
    }

    fn on(self, fabric: Option<Fabric>) -> Option<(RunKind, WallTime)> {
        Some((RunKind { fabric, ..self.ended? }, self.last?))
    }
}

impl Links {
    /// The lots of a job, in no particular order.
    pub(crate) fn lots_of(&self, job: JobId) -> &[LotId] {
        self.lots_of_job.get(&job).map_or(&[], Vec::as_slice)
    }

    /// The runs of a lot, in no particular order.
    pub(crate) fn runs_of(&self, lot: LotId) -> &[RunId] {
        self.runs_of_lot.get(&lot).map_or(&[], Vec::as_slice)
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

    /// Number of rows that were decoded or changed. Tests count them.
    pub(super) fn rows_in_memory(&self) -> usize {
        let owners = self.lots_of_job.rows_in_memory() + self.runs_of_lot.rows_in_memory();
        owners + self.open_jobs.rows_in_memory() + self.on_press.rows_in_memory()
    }

    pub(super) fn job_changed(&mut self, id: JobId, before: JobStanding, after: JobStanding) {
        set_member(&mut self.open_jobs, id, before.is_open, after.is_open);
        self.finished_jobs.replace(id, before.finished, after.finished);
    }

    pub(super) fn lot_changed(&mut self, id: LotId, before: LotStanding, after: LotStanding, runs: &Table<Run>) {
        if before == after {
            return;
        }
        change_owner(&mut self.lots_of_job, id, before.job, after.job);
        self.new_lots.replace(id, before.created, after.created);
        if before.fabric == after.fabric {
            return;
        }
        let of_lot = self.runs_of_lot.get(&id).into_iter().flatten();
        for (id, run) in of_lot.filter_map(|id| Some((*id, runs.get(id)?))) {
            let run = RunStanding::of(run);
            change_kind(&mut self.ended_runs, id, run.on(before.fabric), run.on(after.fabric));
        }
    }

    pub(super) fn run_changed(&mut self, id: RunId, before: RunStanding, after: RunStanding, lots: &Table<Lot>) {
        if before == after {
            return;
        }
        change_owner(&mut self.runs_of_lot, id, before.lot, after.lot);
        set_member(&mut self.on_press, id, before.is_on_press, after.is_on_press);
        self.recent_runs.replace(id, before.last, after.last);
        if before.ended.is_some() || after.ended.is_some() {
            let on = |run: RunStanding| run.on(run.lot.and_then(|lot| lots.get(&lot)).map(|lot| lot.fabric));
            change_kind(&mut self.ended_runs, id, on(before), on(after));
        }
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

/// Moves a thing from one owner's list to another's.
fn change_owner(owners: &mut Table<Vec<Uuid>>, id: Uuid, before: Option<Uuid>, after: Option<Uuid>) {
    if before == after {
        return;
    }
    if let Some(owner) = before {
        let left = owners.get_or_insert_default(owner);
        left.retain(|other| *other != id);
        if left.is_empty() {
            owners.remove(&owner);
        }
    }
    after.into_iter().for_each(|owner| owners.get_or_insert_default(owner).push(id));
}

/// Moves an ended run to its kind and time, if either changed.
fn change_kind(
    ended: &mut EndedRuns,
    id: RunId,
    before: Option<(RunKind, WallTime)>,
    after: Option<(RunKind, WallTime)>,
) {
    if before != after {
        before.into_iter().for_each(|(kind, last)| ended.remove(kind, (last, id)));
        after.into_iter().for_each(|(kind, last)| ended.insert(kind, (last, id)));
    }
}

#[cfg(test)]
mod tests;
