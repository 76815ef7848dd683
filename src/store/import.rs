//! Importing a backup file: it is read and described first, merged when the user says so, and can be taken back.

use super::Store;
use super::archive::{MergeError, MergeSummary, photos_of};
use super::photos::has_room;
use crate::lazy::{ChunkLoadError, Work, chunk};
use crate::platform::files::Incoming;
use crate::platform::{clock, spawn_local, tabs};
use lastpull_core::exchange::{Backup, BackupProblem, ImportPreview, read_backup};
use lastpull_core::facts::{Entry, Journal};
use lastpull_core::ids::PhotoId;
use lastpull_core::journal::{Checkpoint, Coverage, Storage, StorageFault, TooMany};
use lastpull_core::photo::PhotoStore;
use lastpull_core::shop::Shop;
use lastpull_core::time::{Millis, WallTime};
use leptos::prelude::*;
use std::collections::BTreeSet;
use std::time::Duration;

/// What an import added.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct ImportSummary {
    /// The facts.
    pub facts: MergeSummary,
    /// Number of photos that were new here.
    pub photos: u32,
    /// Number of photos that the shop shows now and this device still lacks.
    pub photos_missing: u32,
}

/// Why a file was refused. Nothing was changed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum ImportError {
    /// No file was picked, or it could not be read.
    NotRead,
    /// The chunk that reads it could not be loaded.
    ChunkNotLoaded,
    /// The device has too little space for its photos.
    NoRoom,
    /// It is not a backup, or damaged.
    File(BackupProblem),
    /// It has more devices or gaps than a shop can have.
    TooMany(TooMany),
    /// It could not be stored.
    Storage(StorageFault),
}

/// A file that was read to its end, and waits for the user's decision.
pub struct PickedFile {
    backup: Backup<Incoming>,
}

/// What an import brought.
#[derive(Clone, Debug)]
pub struct Brought {
    facts: Coverage,
    photos: Vec<PhotoId>,
    at: WallTime,
}

/// Tries of a change of the whole journal while other tabs write.
const TRIES: u32 = 6;

chunk! {
    archive: fn split_read_file(store: Store, file: Incoming) -> Result<Work<Result<ImportPreview, ImportError>>, ChunkLoadError> {
        Ok(Box::pin(store.read_file(file)))
    }
}

chunk! {
    archive: fn split_import_picked(store: Store) -> Result<Work<Result<ImportSummary, ImportError>>, ChunkLoadError> {
        Ok(Box::pin(store.import_picked()))
    }
}

chunk! {
    archive: fn split_take_back(store: Store) -> Result<Work<Result<u64, ImportError>>, ChunkLoadError> {
        Ok(Box::pin(store.take_back_brought()))
    }
}

async fn read_file_lazily(store: Store, file: Incoming) -> Result<ImportPreview, ImportError> {
    match split_read_file(store, file).await {
        Ok(reading) => reading.await,
        Err(ChunkLoadError) => Err(ImportError::ChunkNotLoaded),
    }
}

async fn import_picked_lazily(store: Store) -> Result<ImportSummary, ImportError> {
    match split_import_picked(store).await {
        Ok(importing) => importing.await,
        Err(ChunkLoadError) => Err(ImportError::ChunkNotLoaded),
    }
}

async fn take_back_lazily(store: Store) -> Result<u64, ImportError> {
    match split_take_back(store).await {
        Ok(taking) => taking.await,
        Err(ChunkLoadError) => Err(ImportError::ChunkNotLoaded),
    }
}

impl Store {
    /// Reads a picked file and says what it would bring. A file with no new fact is merged at once: it changes
    /// nothing, but may have photos.
    pub fn pick_file(self, file: Option<Incoming>) {
        self.session.update_value(|session| session.picked = None);
        self.setters().backup.update(|backup| {
            backup.busy = true;
            (backup.preview, backup.imported, backup.taken_back) = (None, None, None);
        });
        spawn_local(async move {
            // Lets the page show the progress before the reading blocks the thread.
            clock::wait(Duration::from_millis(20)).await;
            let read = match file {
                Some(file) => read_file_lazily(self, file).await,
                None => Err(ImportError::NotRead),
            };
            match read {
                Ok(preview) if preview.new > 0 => self.setters().backup.update(|backup| {
                    backup.busy = false;
                    backup.preview = Some(preview);
                }),
                Ok(_) => self.import_now().await,
                Err(error) => self.setters().backup.update(|backup| {
                    backup.busy = false;
                    backup.imported = Some(Err(error));
                }),
            }
        });
    }

    /// Leaves the picked file alone.
    pub fn leave_file(self) {
        self.session.update_value(|session| session.picked = None);
        self.setters().backup.update(|backup| backup.preview = None);
    }

    /// Merges the picked file: all of it or nothing.
    pub fn import(self) {
        self.setters().backup.update(|backup| {
            backup.busy = true;
            backup.preview = None;
        });
        spawn_local(async move {
            clock::wait(Duration::from_millis(20)).await;
            self.import_now().await;
        });
    }

    async fn import_now(self) {
        let imported = import_picked_lazily(self).await;
        self.session.update_value(|session| session.picked = None);
        let can_take_back = self.session.with_value(|session| session.brought.is_some());
        self.setters().backup.update(|backup| {
            backup.busy = false;
            backup.can_take_back = can_take_back;
            backup.imported = Some(imported);
        });
    }

    /// Takes back what the last import brought. What was recorded here since stays.
    pub fn take_back_import(self) {
        self.setters().backup.update(|backup| backup.busy = true);
        spawn_local(async move {
            clock::wait(Duration::from_millis(20)).await;
            let taken = take_back_lazily(self).await;
            self.setters().backup.update(|backup| {
                backup.busy = false;
                if taken.is_ok() {
                    (backup.imported, backup.can_take_back) = (None, false);
                }
                backup.taken_back = Some(taken);
            });
        });
    }

    /// Reads a file. Runs in the chunk.
    pub(crate) async fn read_file(self, file: Incoming) -> Result<ImportPreview, ImportError> {
        let backup = read_backup(file).await.map_err(refused)?;
        let stored = self.storage.get_value().read_all().await.map_err(ImportError::Storage)?;
        let demo = self.settings.with_untracked(|settings| settings.demo);
        let preview = self
            .shop
            .with_untracked(|shop| ImportPreview::of(&backup.entries, backup.demo, shop, stored, demo))
            .map_err(ImportError::TooMany)?;
        self.session.update_value(|session| session.picked = Some(PickedFile { backup }));
        Ok(preview)
    }

    /// Merges the picked file. Runs in the chunk.
    pub(crate) async fn import_picked(self) -> Result<ImportSummary, ImportError> {
        let picked = self.session.try_update_value(|session| session.picked.take()).flatten();
        let Some(PickedFile { mut backup }) = picked else { return Err(ImportError::NotRead) };
        let storage = self.storage.get_value();
        let arriving: Vec<Entry> = std::mem::take(&mut backup.entries);
        let now = clock::now().now;
        let mut all = storage.read_all().await.map_err(ImportError::Storage)?;
        all.extend_from_slice(&arriving);
        let shown = photos_of(&all, now);
        drop(all);
        let mut photo_import = PhotoImport { at: now, new: Vec::new() };
        // The photos first, then the facts that name them.
        let imported = match self.import_photos(&backup, &shown, &mut photo_import).await {
            Ok(()) => self.merge(arriving).await.map_err(ImportError::from),
            Err(error) => Err(error),
        };
        let (facts, added) = match imported {
            Ok(merged) => merged,
            Err(error) => {
                // Delete what this import added; photos that were kept again since then stay.
                let _ = storage.delete_photos(&photo_import.new, photo_import.at + Millis::from_ms(1)).await;
                return Err(error);
            }
        };
        if facts.new > 0 {
            // Facts of this device's own id are among them only if its next number is not: it has a new id otherwise.
            let (photos, at) = (photo_import.new.clone(), photo_import.at);
            self.session.update_value(|session| session.brought = Some(Brought { facts: added, photos, at }));
        }
        let stored = storage.photos().await.unwrap_or_default();
        let photos_missing = shown.difference(&stored).count() as u32;
        self.refresh_persistence();
        Ok(ImportSummary { facts, photos: photo_import.new.len() as u32, photos_missing })
    }

    /// Takes the last import back: all of it or nothing. Runs in the chunk.
    pub(crate) async fn take_back_brought(self) -> Result<u64, ImportError> {
        let Some(brought) = self.session.with_value(|session| session.brought.clone()) else {
            return Err(ImportError::NotRead);
        };
        self.flush().await;
        let storage = self.storage.get_value();
        let mut tries = 0;
        loop {
            let head = storage.open().await.map_err(ImportError::Storage)?.head;
            let mut remaining = storage.read_all().await.map_err(ImportError::Storage)?;
            let stored = remaining.len();
            remaining.retain(|entry| !brought.facts.holds(entry.device, entry.seq));
            let gone = (stored - remaining.len()) as u64;
            let checkpoint = Checkpoint::of(&Shop::fold(&Journal::stored(remaining.clone())));
            match storage.withdraw(&head, &remaining, &checkpoint).await {
                Ok(_) => {
                    self.session.update_value(|session| session.brought = None);
                    let _ = storage.delete_photos(&brought.photos, brought.at + Millis::from_ms(1)).await;
                    self.reload().await.map_err(|error| ImportError::from(MergeError::from(error)))?;
                    tabs::notify_changed();
                    self.refresh_persistence();
                    return Ok(gone);
                }
                Err(StorageFault::Stale) if tries < TRIES => tries += 1,
                Err(fault) => return Err(ImportError::Storage(fault)),
            }
        }
    }

    /// Reads every photo of a file, needed or not, since one that does not match its id makes the file invalid;
    /// keeps those that the shop will show.
    async fn import_photos(
        self,
        backup: &Backup<Incoming>,
        shown: &BTreeSet<PhotoId>,
        photo_import: &mut PhotoImport,
    ) -> Result<(), ImportError> {
        let storage = self.storage.get_value();
        let stored = storage.photos().await.map_err(ImportError::Storage)?;
        let here = self.shop.with_untracked(|shop| shop.photos.ids());
        let new = |id: &PhotoId| shown.contains(id) && !stored.contains(id);
        let need: f64 = backup.photos().filter(|(id, _)| new(id)).map(|(_, bytes)| f64::from(bytes)).sum();
        if need > 0.0 && !has_room(need).await {
            return Err(ImportError::NoRoom);
        }
        for (id, _) in backup.photos() {
            let Some(photo) = backup.photo(id).await.map_err(refused)? else { continue };
            // A photo that is stored but no longer shown will be shown again: renew its time.
            if shown.contains(&id) && !(stored.contains(&id) && here.contains(&id)) {
                let kept = storage.store_photo(&photo, None, photo_import.at).await.map_err(ImportError::Storage)?;
                photo_import.new.extend(kept.then_some(id));
            }
        }
        Ok(())
    }
}

/// State of importing the photos of a file.
struct PhotoImport {
    /// The wall time at which they are kept.
    at: WallTime,
    /// Photos that were not stored before.
    new: Vec<PhotoId>,
}

impl From<MergeError> for ImportError {
    fn from(error: MergeError) -> Self {
        match error {
            MergeError::TooMany(many) => Self::TooMany(many),
            MergeError::Storage(fault) => Self::Storage(fault),
            MergeError::ChunkNotLoaded => Self::ChunkNotLoaded,
        }
    }
}

fn refused(problem: BackupProblem) -> ImportError {
    if problem == BackupProblem::NotRead { ImportError::NotRead } else { ImportError::File(problem) }
}
