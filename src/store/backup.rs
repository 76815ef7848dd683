//! The backup file, out and in.

use super::journal::{AbsorbError, Arrived};
use super::{SaveState, Store};
use crate::later::{NotLoaded, read_backup_later, write_backup_later};
use crate::platform::files::{Left, Outgoing};
use crate::platform::spawn_local;
use crate::platform::{clock, ids};
use crate::words;
use lastpull_core::exchange::BackupProblem;
use lastpull_core::journal::{Conflict, Draft, Head, Storage, StorageFault, allocate};
use leptos::prelude::*;
use send_wrapper::SendWrapper;
use std::time::Duration;

/// The backup being made or taken in.
#[derive(Clone, Default)]
pub struct BackupState {
    /// Whether something is under way.
    pub busy: bool,
    /// A file ready to leave, made before the tap that sends it.
    pub ready: Option<Ready>,
    /// What the last file brought, or why it was refused.
    pub brought: Option<Result<Brought, BringError>>,
}

/// A file ready to leave.
#[derive(Clone)]
pub struct Ready {
    /// The file.
    pub file: SendWrapper<Outgoing>,
    /// Facts in it.
    pub facts: u64,
    /// Facts in it that could not be saved here.
    pub rescued: Vec<Draft>,
}

/// What a file brought.
pub type Brought = Arrived;

/// Why a file was refused. Nothing was changed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum BringError {
    /// It could not be read from the device.
    NotRead,
    /// What reads it could not be fetched.
    NotLoaded,
    /// It is no backup, or a damaged one.
    File(BackupProblem),
    /// It contradicts what is here.
    Conflict(Conflict),
    /// It could not be stored.
    Storage(StorageFault),
}

impl Store {
    /// Makes the backup file: everything stored, and what waits and could not be saved.
    pub fn prepare_backup(self) {
        self.backup.update(|backup| {
            backup.busy = true;
            backup.ready = None;
        });
        spawn_local(async move {
            // Let the screen say so before the packing takes the thread.
            clock::wait(Duration::from_millis(20)).await;
            let ready = self.make_backup().await;
            self.backup.update(|backup| {
                backup.busy = false;
                backup.ready = ready;
            });
        });
    }

    async fn make_backup(self) -> Option<Ready> {
        self.settle().await;
        let storage = self.storage.get_value();
        // Where the store does not even read, what this page has seen is better than nothing.
        let mut entries = storage.everything().await.unwrap_or_else(|_| self.recent.get_value());
        // Only what saving has given up on: anything else is about to be stored, and would count twice.
        let blocked = matches!(self.saving.get_untracked(), SaveState::Blocked(_));
        let rescued: Vec<Draft> = self.waiting.with_untracked(|waiting| {
            waiting.iter().filter(|_| blocked).map(|waiting| waiting.draft.clone()).collect()
        });
        // Under a device id of their own: their numbers here are not given out yet.
        entries.extend(allocate(&mut Head::default(), ids::new_id(), &rescued));
        let clock = clock::now();
        let facts = entries.len() as u64;
        let bytes = match write_backup_later(entries, clock.now).await {
            Ok(bytes) => bytes.ok()?,
            Err(NotLoaded) => {
                self.tell(words::part_failed_text());
                return None;
            }
        };
        let minutes = clock.minutes_of(clock.now);
        let name = format!("lastpull-{}-{:02}{:02}.zip", clock.today(), minutes / 60, minutes % 60);
        let file = SendWrapper::new(Outgoing::new(&name, &bytes)?);
        Some(Ready { file, facts, rescued })
    }

    /// Sends the prepared file away, by sharing or as a download. Called in the tap itself.
    pub fn send_backup(self, share: bool) {
        let Some(ready) = self.backup.with_untracked(|backup| backup.ready.clone()) else { return };
        spawn_local(async move {
            let left = if share { ready.file.share().await } else { ready.file.download() };
            if matches!(left, Left::Shared | Left::Downloaded) {
                if !ready.rescued.is_empty() {
                    // They are in the file now; saved here too they would count twice when it comes back.
                    self.waiting.update(|waiting| {
                        for draft in &ready.rescued {
                            if let Some(at) = waiting.iter().position(|waiting| waiting.draft == *draft) {
                                waiting.remove(at);
                            }
                        }
                    });
                    self.try_again();
                }
                self.set(|settings| {
                    settings.backed_up = Some(clock::now().now);
                    settings.backed_up_facts = ready.facts;
                });
                self.backup.update(|backup| backup.ready = None);
            }
        });
    }

    /// Downloads everything that can still be read, when the shop itself does not open.
    pub fn rescue(self) {
        spawn_local(async move {
            if let Some(ready) = self.make_backup().await {
                ready.file.download();
            }
        });
    }

    /// Takes in a backup file: all of it or nothing.
    pub fn bring(self, bytes: Result<Vec<u8>, bool>) {
        self.backup.update(|backup| {
            backup.busy = true;
            backup.brought = None;
        });
        spawn_local(async move {
            clock::wait(Duration::from_millis(20)).await;
            let brought = self.try_bring(bytes).await;
            self.backup.update(|backup| {
                backup.busy = false;
                backup.brought = Some(brought);
            });
        });
    }

    async fn try_bring(self, bytes: Result<Vec<u8>, bool>) -> Result<Brought, BringError> {
        let bytes = bytes
            .map_err(|large| if large { BringError::File(BackupProblem::TooLarge) } else { BringError::NotRead })?;
        let entries = read_backup_later(bytes).await.map_err(|NotLoaded| BringError::NotLoaded)?;
        let entries = entries.map_err(BringError::File)?;
        self.absorb(entries).await.map_err(|error| match error {
            AbsorbError::Conflict(conflict) => BringError::Conflict(conflict),
            AbsorbError::Storage(fault) => BringError::Storage(fault),
        })
    }
}
