//! Facts on their way to the disk. A fact counts as saved when its transaction has committed; until
//! then it is shown as waiting. When saving fails it is tried again, then counting is blocked in
//! plain words, with a way to get the data out; nothing that was counted is dropped.

use super::Store;
use crate::i18n;
use crate::platform::{clock, spawn_local, tabs};
use lastpull_core::facts::{Draft, Fact};
use lastpull_core::ids::Subject;
use lastpull_core::journal::JournalFact;
use lastpull_core::journal::{Storage, StorageFault};
use lastpull_core::run::Pending;
use leptos::prelude::*;
use std::cell::Cell;
use std::time::Duration;

/// A fact handed over and not saved yet.
#[derive(Clone, Debug, PartialEq)]
pub struct PendingFact {
    /// The fact.
    pub draft: Draft,
}

impl PendingFact {
    /// What it does to a run, to be shown before it is saved.
    pub fn to_pending(&self) -> Pending {
        Pending { run: self.draft.subject, at: self.draft.at, fact: self.draft.fact.clone() }
    }
}

/// Whether saving works.
#[derive(Clone, Debug, PartialEq)]
pub enum SaveState {
    /// It does.
    Fine,
    /// It failed and is being tried again.
    Retrying(StorageFault),
    /// It failed for good: counting is blocked until the person acts.
    Blocked(StorageFault),
}

/// Waits between tries. Opening the database again mends most faults at the first.
const RETRIES: [Duration; 3] = [Duration::from_millis(100), Duration::from_millis(700), Duration::from_secs(2)];

/// How long the disk may take before the screen shows what is not saved yet.
const SOON: Duration = Duration::from_millis(24);

/// Does what can wait until the disk has had its chance with what was handed over just before. Not even the clock is
/// wound before the disk is asked.
pub fn after_write(action: impl FnOnce() + 'static) {
    spawn_local(async { clock::after(SOON, action) });
}

thread_local! {
    static WRITING: Cell<bool> = const { Cell::new(false) };
}

impl Store {
    /// Hands over facts to be saved, in this order, in as few transactions as can be. A fact out of bounds, which
    /// would keep a backup from being read, is a fault of the screen: then none of them is taken, and that is said.
    pub fn record_all(self, facts: Vec<(Subject, Fact)>) {
        self.enqueue(facts);
    }

    /// Whether the facts were taken.
    fn enqueue(self, facts: Vec<(Subject, Fact)>) -> bool {
        let kept = facts.iter().all(|(_, fact)| fact.in_bounds());
        debug_assert!(kept, "out of bounds: {facts:?}");
        if !kept {
            // After whatever the screen says of what it thinks is done.
            clock::after(Duration::ZERO, move || self.notify(i18n::not_written()));
            return false;
        }
        let at = clock::now().now;
        let drafts = facts.into_iter().map(|(subject, fact)| PendingFact { draft: Draft { at, subject, fact } });
        // A commit takes a few milliseconds, drawing the count many times that: the disk goes first, and
        // one drawing shows the saved count. Should the disk take longer, the unsaved count is shown.
        self.pending.update_untracked(|waiting| waiting.extend(drafts));
        self.write();
        after_write(move || {
            if self.pending.with_untracked(|waiting| !waiting.is_empty()) {
                self.pending.notify();
            }
        });
        true
    }

    /// Hands over facts and waits until they are saved; false when they could not be yet, or were not taken.
    pub async fn record_and_wait(self, facts: Vec<(Subject, Fact)>) -> bool {
        self.enqueue(facts) && self.flush().await
    }

    /// Waits until everything handed over is saved, or saving has given up; false then.
    pub(super) async fn flush(self) -> bool {
        while self.pending.with_untracked(|waiting| !waiting.is_empty()) {
            if matches!(self.saving.get_untracked(), SaveState::Blocked(_)) {
                return false;
            }
            clock::wait(Duration::from_millis(4)).await;
        }
        true
    }

    /// Loads the page again once everything handed over is saved.
    pub fn reopen_page(self) {
        spawn_local(async move {
            if self.flush().await {
                crate::platform::dom::reload();
            }
        });
    }

    /// Tries again to save what waits, after the person asked for it.
    pub fn retry_save(self) {
        self.saving.set(SaveState::Fine);
        self.write();
    }

    /// Writes what waits, unless that is under way.
    fn write(self) {
        if WRITING.replace(true) {
            return;
        }
        spawn_local(async move {
            self.write_all().await;
            WRITING.set(false);
        });
    }

    async fn write_all(self) {
        let mut failures = 0;
        loop {
            let drafts: Vec<Draft> =
                self.pending.with_untracked(|waiting| waiting.iter().map(|waiting| waiting.draft.clone()).collect());
            if drafts.is_empty() || matches!(self.saving.get_untracked(), SaveState::Blocked(_)) {
                return;
            }
            match self.storage.get_value().append(&drafts).await {
                Ok(entries) => {
                    failures = 0;
                    // A file made while these could not be saved holds copies of them.
                    let stale = self
                        .backup
                        .with_untracked(|backup| backup.ready.as_ref().is_some_and(|ready| !ready.rescued.is_empty()));
                    if stale {
                        self.backup.update(|backup| backup.ready = None);
                    }
                    self.pending.update(|waiting| drop(waiting.drain(..drafts.len().min(waiting.len()))));
                    self.apply_saved(&entries);
                    tabs::notify_saved(&entries);
                    if self.saving.with_untracked(|state| *state != SaveState::Fine) {
                        self.saving.set(SaveState::Fine);
                    }
                }
                Err(fault) => match RETRIES.get(failures) {
                    Some(delay) => {
                        failures += 1;
                        self.saving.set(SaveState::Retrying(fault));
                        clock::wait(*delay).await;
                    }
                    None => self.saving.set(SaveState::Blocked(fault)),
                },
            }
        }
    }
}

/// Has the browser ask before the page is left with facts still waiting.
pub(super) fn warn_before_leaving(store: Store) {
    let handle = window_event_listener(leptos::ev::beforeunload, move |event| {
        if store.pending.with_untracked(|waiting| !waiting.is_empty()) {
            event.prevent_default();
        }
    });
    std::mem::forget(handle);
}
