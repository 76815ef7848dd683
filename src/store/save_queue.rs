//! Facts waiting to be saved. A fact counts as saved when its transaction has committed; until
//! then it is shown as unsaved. If saving fails it is tried again, then counting is blocked with
//! a message and a way to export the data; nothing that was counted is dropped.

use super::Store;
use super::notice::StoreEvent;
use crate::lazy::{ChunkLoadError, chunk};
use crate::platform::{clock, spawn_local, tabs};
use lastpull_core::facts::{Draft, Fact};
use lastpull_core::ids::Subject;
use lastpull_core::journal::JournalFact;
use lastpull_core::journal::{Storage, StorageFault};
use lastpull_core::run::UnsavedFact;
use leptos::prelude::*;
use std::cell::Cell;
use std::time::Duration;

/// A fact that is not saved yet.
#[derive(Clone, Debug, PartialEq)]
pub struct PendingFact {
    /// The fact.
    pub draft: Draft,
}

impl PendingFact {
    /// Its effect on a run, to be shown before it is saved.
    pub fn to_pending(&self) -> UnsavedFact {
        UnsavedFact { run: self.draft.subject, at: self.draft.at, fact: self.draft.fact.clone() }
    }
}

/// Whether saving works.
#[derive(Clone, Debug, PartialEq)]
pub enum SaveState {
    /// It works.
    Fine,
    /// It failed and is being tried again.
    Retrying(StorageFault),
    /// It failed at every retry: counting is blocked until the user acts.
    Blocked(StorageFault),
}

/// Delays before the retries. Opening the database again cures most faults at the first.
const RETRIES: [Duration; 3] = [Duration::from_millis(100), Duration::from_millis(700), Duration::from_secs(2)];

/// How long a save may take before the page shows the fact as unsaved.
const UNSAVED_DELAY: Duration = Duration::from_millis(24);

/// Runs `action` after a short delay, so that the write of facts recorded just before starts first. The timer itself
/// is set only after that write has started.
pub fn after_write(action: impl FnOnce() + 'static) {
    spawn_local(async { clock::after(UNSAVED_DELAY, action) });
}

thread_local! {
    static WRITING: Cell<bool> = const { Cell::new(false) };
}

chunk! {
    archive: fn split_stored_forms(drafts: Vec<Draft>) -> Result<Vec<Option<Draft>>, ChunkLoadError> {
        Ok(drafts.into_iter().map(stored_form).collect())
    }
}

/// The draft as it is stored; `None` if the line of a file could not hold it.
fn stored_form(draft: Draft) -> Option<Draft> {
    draft.fact.can_be_recorded().then(|| Draft { fact: draft.fact.stored_form(), ..draft })
}

impl Store {
    /// Records facts, in this order, in as few transactions as possible. A fact out of bounds, which would make a
    /// backup unreadable, is a bug of the page: then none of them is recorded, and a notice says so.
    pub fn record_all(self, facts: Vec<(Subject, Fact)>) {
        self.enqueue(facts);
    }

    /// Returns whether the facts were accepted.
    fn enqueue(self, facts: Vec<(Subject, Fact)>) -> bool {
        let kept = facts.iter().all(|(_, fact)| fact.in_bounds());
        debug_assert!(kept, "out of bounds: {facts:?}");
        if !kept {
            // After any notice in which the page reports success.
            clock::after(Duration::ZERO, move || self.notify_event(StoreEvent::OutOfBounds));
            return false;
        }
        let at = clock::now().now;
        let drafts = facts.into_iter().map(|(subject, fact)| PendingFact { draft: Draft { at, subject, fact } });
        // A commit takes a few milliseconds, drawing the count many times that: the write goes first, and
        // one drawing shows the saved count. If the write takes longer, the unsaved count is shown.
        self.setters().pending.update_untracked(|waiting| waiting.extend(drafts));
        self.write();
        after_write(move || {
            if self.pending.with_untracked(|waiting| !waiting.is_empty()) {
                self.setters().pending.notify();
            }
        });
        true
    }

    /// Records facts and waits until they are saved; false if they could not be saved yet, or were not accepted.
    pub async fn record_and_wait(self, facts: Vec<(Subject, Fact)>) -> bool {
        self.enqueue(facts) && self.flush().await
    }

    /// Waits until all recorded facts are saved, or saving has given up; false then.
    pub(super) async fn flush(self) -> bool {
        while self.pending.with_untracked(|waiting| !waiting.is_empty()) {
            if matches!(self.saving.get_untracked(), SaveState::Blocked(_)) {
                return false;
            }
            clock::wait(Duration::from_millis(4)).await;
        }
        true
    }

    /// Reloads the page once all recorded facts are saved.
    pub fn reopen_page(self) {
        spawn_local(async move {
            if self.flush().await {
                crate::platform::dom::reload();
            }
        });
    }

    /// Tries again to save, after the user asked for it.
    pub fn retry_save(self) {
        self.setters().saving.set(SaveState::Fine);
        self.write();
    }

    /// Writes the unsaved facts, unless a write is in progress.
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
            let Some(stored) = self.stored_forms(&drafts).await else { continue };
            match self.storage.get_value().append(&stored).await {
                Ok(mut entries) => {
                    failures = 0;
                    for (entry, draft) in entries.iter_mut().zip(&drafts) {
                        entry.fact = draft.fact.clone();
                    }
                    // A backup file made while these could not be saved holds copies of them.
                    let stale = self
                        .backup
                        .with_untracked(|backup| backup.ready.as_ref().is_some_and(|ready| !ready.rescued.is_empty()));
                    if stale {
                        self.setters().backup.update(|backup| backup.ready = None);
                    }
                    self.setters().pending.update(|waiting| drop(waiting.drain(..drafts.len().min(waiting.len()))));
                    self.apply_saved(&entries);
                    tabs::notify_saved(&entries);
                    if self.saving.with_untracked(|state| *state != SaveState::Fine) {
                        self.setters().saving.set(SaveState::Fine);
                    }
                }
                Err(fault) => match RETRIES.get(failures) {
                    Some(delay) => {
                        failures += 1;
                        self.setters().saving.set(SaveState::Retrying(fault));
                        clock::wait(*delay).await;
                    }
                    None => self.setters().saving.set(SaveState::Blocked(fault)),
                },
            }
        }
    }

    /// The facts as they are stored. `None` if a file could not hold one of them: it is dropped from the waiting facts,
    /// with a notice. If the code that finds out cannot be fetched, they are stored as they are.
    async fn stored_forms(self, drafts: &[Draft]) -> Option<Vec<Draft>> {
        if drafts.iter().all(|draft| draft.fact.is_plain()) {
            return Some(drafts.to_vec());
        }
        let Ok(stored) = split_stored_forms(drafts.to_vec()).await else { return Some(drafts.to_vec()) };
        if stored.iter().all(Option::is_some) {
            return Some(stored.into_iter().flatten().collect());
        }
        self.setters().pending.update(|waiting| {
            let mut stored = stored.iter();
            // Facts recorded meanwhile are behind them.
            waiting.retain(|_| stored.next().is_none_or(Option::is_some));
        });
        self.notify_event(StoreEvent::OutOfBounds);
        None
    }

    /// Makes the browser ask before the page is closed with unsaved facts.
    pub(super) fn warn_before_leaving(self) {
        let handle = window_event_listener(leptos::ev::beforeunload, move |event| {
            if self.pending.with_untracked(|pending| !pending.is_empty()) {
                event.prevent_default();
            }
        });
        std::mem::forget(handle);
    }
}
