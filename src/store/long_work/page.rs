//! The page's side: it starts the worker, shows how far it is, and ends it.

use super::super::Store;
use super::task::Task;
use super::{Progress, Step};
use crate::platform::app_worker::{Answer, AppWorker, Ended, JobProgress};
use lastpull_core::codec::to_bytes;
use lastpull_core::exchange::Share;
use leptos::prelude::*;
use wasm_bindgen::JsValue;

/// What came of asking a worker.
pub(in super::super) enum Asked {
    /// Its answer.
    Answered(Answer),
    /// The user ended it.
    Cancelled,
    /// It did not do it: the page does it itself.
    NotDone,
}

impl Store {
    /// Starts a worker, gives it a task, and leaves it running for another one.
    pub(in super::super) async fn start_work(self, task: &Task, file: &JsValue) -> Asked {
        let show = move |JobProgress { step, done, of }| {
            if let Some(step) = Step::ALL.get(step as usize).copied() {
                let share = Share { done: done as u64, of: of as u64 };
                self.show_progress(Some(Progress { step, share }));
            }
        };
        self.end_work(Ended::Cancelled);
        match AppWorker::start(show) {
            Some(worker) => {
                self.session.update_value(|session| session.worker = Some(worker));
                self.continue_work(task, file).await
            }
            None => Asked::NotDone,
        }
    }

    /// Gives another task to the worker that is running.
    pub(in super::super) async fn continue_work(self, task: &Task, file: &JsValue) -> Asked {
        let Some(worker) = self.session.with_value(|session| session.worker.clone()) else { return Asked::NotDone };
        let answer = worker.ask(&to_bytes(task), file).await;
        self.show_progress(None);
        match answer {
            Ok(answer) => Asked::Answered(answer),
            Err(Ended::Cancelled) => Asked::Cancelled,
            Err(Ended::Failed) => Asked::NotDone,
        }
    }

    /// Ends the worker, if one is running: its memory is free again.
    pub(in super::super) fn end_work(self, why: Ended) {
        if let Some(worker) = self.session.try_update_value(|session| session.worker.take()).flatten() {
            worker.end(why);
        }
    }

    /// Cancels what a worker is doing. Nothing is changed then, unless it had just been stored.
    pub fn cancel_work(self) {
        self.end_work(Ended::Cancelled);
    }

    fn show_progress(self, progress: Option<Progress>) {
        self.setters().progress.set(progress);
    }
}
