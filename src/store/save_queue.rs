//! Facts waiting to be saved. A fact counts as saved when its transaction has committed; until
//! then it is shown as unsaved. If saving fails it is tried again, then counting is blocked with
//! a message and a way to export the data; nothing that was counted is dropped. A write that is not answered is never
//! repeated, since it may still happen: after a while it blocks counting too, and its answer, if it comes, counts.
//!
//! # Decisions
//!
//! - **A write is never repeated while its answer may still come** (2026-11-29). A write without an answer blocks
//!   counting after eight seconds and is waited for. Facts that cannot be saved are exported under a device id of
//!   their own, stay pending until the user says that the file is there, and if saved after all, are saved as the
//!   entries in the file: nothing counts twice.
//! - **Write first, draw once** (2026-11-25). A count waits for its commit (a few milliseconds) and is then drawn as
//!   saved; if the disk takes longer than 24 ms, the unsaved count is drawn at once. Vibration and sound come with
//!   the drawing.

use super::Store;
use super::notice::StoreEvent;
use crate::lazy::{ChunkLoadError, chunk};
use crate::platform::{clock, spawn_local, tabs};
use lastpull_core::facts::{Draft, Entry, Fact};
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
    /// Its number among those of this page.
    pub(super) id: u64,
    /// Number of the first fact that was recorded together with it.
    recorded_with: u64,
    /// The entry as which it is in an exported file. If it is saved here after all, it is saved as that entry: then an
    /// import of the file does not count it twice.
    pub(super) exported: Option<Entry>,
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

/// Time after which a write without an answer blocks counting.
const WRITE_TIMEOUT: Duration = Duration::from_secs(8);

/// Runs `action` after a short delay, so that the write of facts recorded just before starts first. The timer itself
/// is set only after that write has started.
pub fn after_write(action: impl FnOnce() + 'static) {
    spawn_local(async { clock::after(UNSAVED_DELAY, action) });
}

thread_local! {
    static WRITING: Cell<bool> = const { Cell::new(false) };
    /// Number of writes begun, and of facts recorded.
    static WRITES: Cell<u64> = const { Cell::new(0) };
    static RECORDED: Cell<u64> = const { Cell::new(0) };
    /// Number of times that facts were refused after they were accepted.
    static REFUSED: Cell<u64> = const { Cell::new(0) };
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
    pub(super) fn enqueue(self, facts: Vec<(Subject, Fact)>) -> bool {
        let kept = facts.iter().all(|(_, fact)| fact.in_bounds());
        debug_assert!(kept, "out of bounds: {facts:?}");
        if !kept {
            // After any notice in which the page reports success.
            clock::after(Duration::ZERO, move || self.notify_event(StoreEvent::OutOfBounds));
            return false;
        }
        let at = clock::now().now;
        let recorded_with = RECORDED.get();
        let drafts = facts.into_iter().map(|(subject, fact)| {
            let id = RECORDED.replace(RECORDED.get() + 1);
            PendingFact { draft: Draft { at, subject, fact }, id, recorded_with, exported: None }
        });
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
        let refused = REFUSED.get();
        self.enqueue(facts) && self.flush().await && REFUSED.get() == refused
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
                crate::platform::history::reload();
            }
        });
    }

    /// Opens the newer build once all recorded facts are saved: before that, the browser would ask whether to leave the page.
    pub fn open_update(self) {
        spawn_local(async move {
            if self.flush().await {
                crate::platform::updates::open_newer();
            }
        });
    }

    /// Tries again to save, after the user asked for it.
    pub fn retry_save(self) {
        self.setters().saving.set(SaveState::Fine);
        if WRITING.get() {
            self.watch_write();
        }
        self.write();
    }

    /// Blocks counting if the write under way is not answered in time.
    fn watch_write(self) {
        let write = WRITES.get();
        clock::after(WRITE_TIMEOUT, move || {
            if WRITING.get() && WRITES.get() == write {
                self.setters().saving.set(SaveState::Blocked(StorageFault::Silent));
            }
        });
    }

    /// Lets no write begin, and waits until the one under way has ended: the shop is about to be erased or left, and
    /// nothing may be written into it afterwards.
    pub(super) async fn stop_writing(self) {
        self.session.update_value(|session| session.writes_stopped = true);
        while WRITING.get() {
            clock::wait(Duration::from_millis(4)).await;
        }
    }

    /// Lets writes begin again: what was recorded meanwhile is of the shop that is open now.
    pub(super) fn resume_writing(self) {
        self.session.update_value(|session| session.writes_stopped = false);
        self.setters().saving.set(SaveState::Fine);
        self.write();
    }

    /// Whether no write may begin.
    fn is_halted(self) -> bool {
        self.session.with_value(|session| session.writes_stopped)
            || matches!(self.saving.get_untracked(), SaveState::Blocked(_))
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
            let waiting = self.pending.get_untracked();
            if waiting.is_empty() || self.is_halted() {
                return;
            }
            // Those in an exported file have their numbers already, and are saved on their own.
            let exported: Vec<&PendingFact> = waiting.iter().filter(|waiting| waiting.exported.is_some()).collect();
            let written: Vec<&PendingFact> = if exported.is_empty() { waiting.iter().collect() } else { exported };
            let storage = self.storage.get_value();
            let opened = self.opened();
            let Some(stored) = self.stored_forms(&written).await else { continue };
            let numbered = written
                .iter()
                .zip(&stored)
                .filter_map(|(waiting, draft)| Some(Entry { fact: draft.fact.clone(), ..waiting.exported.clone()? }));
            let entries: Vec<Entry> = numbered.collect();
            WRITES.set(WRITES.get() + 1);
            self.watch_write();
            let saved = if entries.is_empty() { storage.append(&stored).await } else { storage.adopt(&entries).await };
            WRITES.set(WRITES.get() + 1);
            match saved {
                Ok(mut entries) => {
                    failures = 0;
                    for (entry, waiting) in entries.iter_mut().zip(&written) {
                        entry.fact = waiting.draft.fact.clone();
                    }
                    // A backup file made while these could not be saved says that they are only in the file.
                    let stale = self
                        .backup
                        .with_untracked(|backup| backup.ready.as_ref().is_some_and(|ready| !ready.rescued.is_empty()));
                    if stale {
                        self.setters().backup.update(|backup| backup.ready = None);
                    }
                    self.setters().pending.update(|pending| {
                        pending.retain(|pending| !written.iter().any(|saved| saved.id == pending.id));
                    });
                    // Another shop may have been opened meanwhile.
                    if opened == self.opened() {
                        self.apply_saved(&entries);
                        tabs::notify_saved(&entries);
                    }
                    if self.saving.with_untracked(|state| *state != SaveState::Fine) {
                        self.setters().saving.set(SaveState::Fine);
                    }
                }
                Err(_) if self.is_halted() => return,
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

    /// The facts as they are stored. `None` if the waiting facts must be looked at again: a file could not hold one of
    /// these, which is dropped with what was recorded together with it, and a notice says so; or they have changed
    /// meanwhile. If the code that finds out cannot be fetched, they are stored as they are.
    async fn stored_forms(self, written: &[&PendingFact]) -> Option<Vec<Draft>> {
        let drafts: Vec<Draft> = written.iter().map(|waiting| waiting.draft.clone()).collect();
        if drafts.iter().all(|draft| draft.fact.is_plain()) {
            return Some(drafts);
        }
        let Ok(stored) = split_stored_forms(drafts.clone()).await else { return Some(drafts) };
        if self.pending.with_untracked(|pending| written.iter().any(|waiting| !pending.contains(waiting))) {
            return None;
        }
        if stored.iter().all(Option::is_some) {
            return Some(stored.into_iter().flatten().collect());
        }
        let too_long = written.iter().zip(&stored).filter(|(_, stored)| stored.is_none());
        let refused: Vec<u64> = too_long.map(|(waiting, _)| waiting.recorded_with).collect();
        self.setters().pending.update(|pending| pending.retain(|waiting| !refused.contains(&waiting.recorded_with)));
        REFUSED.set(REFUSED.get() + 1);
        self.notify_event(StoreEvent::TooLong);
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
