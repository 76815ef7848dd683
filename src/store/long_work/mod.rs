//! Work on the whole journal: importing a file and taking that back, exporting one, and folding everything.
//!
//! Each piece of work is a function over a storage that knows nothing of the page. For a long journal it runs in a worker
//! ([`worker`]), with the same code and a connection to the database of its own; the page ([`page`]) shows how far it is
//! and can end it at any moment, since all that it changes is one transaction. Where the worker cannot start, fails or
//! falls silent, the page runs the same function. A short journal is done before a worker would have started.
//!
//! # Decisions
//!
//! - **Long work has a worker of its own** (2026-11-29, `src/store/long_work/`, `work.js`). It runs the app's own
//!   code beside the page, for journals of 20,000 facts or more: below that a worker takes longer to start than the
//!   work. It opens the database itself. The page can end it at any moment, since what it changes is one transaction,
//!   and gets its memory back. A worker that does not start, fails or is silent is replaced by the page.

pub(super) mod backup;
pub(super) mod import;
mod page;
pub(super) mod refold;
mod task;
mod worker;

pub(super) use page::Asked;
pub(super) use task::{Task, from_answer};
pub use worker::work;

use crate::platform::clock;
use lastpull_core::exchange::Share;
use lastpull_core::facts::Entry;
use lastpull_core::time::{Millis, WallTime};
use std::cell::Cell;
use std::rc::Rc;

/// Number of facts from which on a worker does the work.
pub(super) const MANY_FACTS: u64 = 20_000;

/// Size of a file in bytes from which on a worker reads it: about that number of facts.
pub(super) const LARGE_FILE: u64 = 400_000;

/// What a worker, or the page, is busy with.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Step {
    /// Reading the facts of a file.
    Reading,
    /// Folding facts.
    Folding,
    /// Storing what was folded.
    Storing,
    /// Writing facts into a file.
    Writing,
    /// Reading back the facts of the file that was written.
    Checking,
}

impl Step {
    const ALL: [Self; 5] = [Self::Reading, Self::Folding, Self::Storing, Self::Writing, Self::Checking];

    fn number(self) -> u32 {
        Self::ALL.iter().position(|step| *step == self).unwrap_or_default() as u32
    }
}

/// How far a piece of work is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Progress {
    /// What is being done.
    pub step: Step,
    /// How many facts of how many.
    pub share: Share,
}

/// Time between two reports.
const REPORT_EVERY: Millis = Millis::from_ms(50);

/// Reports how far the work is, at most once in [`REPORT_EVERY`].
#[derive(Clone)]
pub(super) struct Watch {
    report: Rc<dyn Fn(Progress)>,
    last: Rc<Cell<Option<(Step, WallTime)>>>,
}

impl Watch {
    fn new(report: impl Fn(Progress) + 'static) -> Self {
        Self { report: Rc::new(report), last: Rc::default() }
    }

    /// Reports nothing: the page draws nothing while it does the work itself.
    pub(super) fn none() -> Self {
        Self::new(|_| ())
    }

    /// Reports how far a step is.
    pub(super) fn tell(&self, step: Step, share: Share) {
        let now = clock::now().now;
        let is_due = |(last, at): (Step, WallTime)| last != step || now < at || now >= at + REPORT_EVERY;
        if share.done == share.of || self.last.get().is_none_or(is_due) {
            self.last.set(Some((step, now)));
            (self.report)(Progress { step, share });
        }
    }

    /// The entries, telling how many of them were taken.
    pub(super) fn count<'a>(
        &'a self,
        step: Step,
        of: u64,
        entries: impl Iterator<Item = Entry> + 'a,
    ) -> impl Iterator<Item = Entry> + 'a {
        let mut done = 0;
        entries.inspect(move |_| {
            done += 1;
            if done % 4_096 == 0 {
                self.tell(step, Share { done, of });
            }
        })
    }
}
