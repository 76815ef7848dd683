//! How a job, a lot or a run is changed: the [links](super::links) follow each change.

use super::Shop;
use super::links::{LinkedJob, LinkedLot, LinkedRun};
use crate::deletion::{Deletable, Deletion};
use crate::ids::{JobId, LotId, RunId, Subject};
use crate::job::model::{Job, Lot};
use crate::run::model::Run;

impl Shop {
    /// Changes a job, which is made if it is not there.
    pub(super) fn change_job(&mut self, id: JobId, change: impl FnOnce(&mut Job)) {
        let mut before = None;
        let job = self.jobs.get_or_insert_with(id, || {
            before = Some(LinkedJob::default());
            Job::default()
        });
        let before = before.unwrap_or_else(|| LinkedJob::of(job));
        change(job);
        self.links.job_changed(id, before, LinkedJob::of(job));
    }

    /// Changes a lot, which is made if it is not there.
    pub(super) fn change_lot(&mut self, id: LotId, change: impl FnOnce(&mut Lot)) {
        let mut before = None;
        let lot = self.lots.get_or_insert_with(id, || {
            before = Some(LinkedLot::default());
            Lot::default()
        });
        let before = before.unwrap_or_else(|| LinkedLot::of(lot));
        change(lot);
        self.links.lot_changed(id, before, LinkedLot::of(lot), &self.runs);
    }

    /// Changes a run, which is made if it is not there.
    pub(super) fn change_run<R>(&mut self, id: RunId, change: impl FnOnce(&mut Run) -> R) -> R {
        let mut before = None;
        let run = self.runs.get_or_insert_with(id, || {
            before = Some(LinkedRun::default());
            Run::default()
        });
        let before = before.unwrap_or_else(|| LinkedRun::of(run));
        let result = change(run);
        self.links.run_changed(id, before, LinkedRun::of(run), &self.lots);
        result
    }

    /// Deletes or restores a job, lot or run. False if there is none with this id.
    pub(super) fn delete_linked(&mut self, id: Subject, deletion: Deletion) -> bool {
        if self.jobs.contains_key(&id) {
            self.change_job(id, |job| job.mark(deletion));
        } else if self.lots.contains_key(&id) {
            self.change_lot(id, |lot| lot.mark(deletion));
        } else if self.runs.contains_key(&id) {
            self.change_run(id, |run| run.mark(deletion));
        } else {
            return false;
        }
        true
    }
}
