//! Exporting and importing the backup file.

use super::Store;
use super::archive::{MergeError, MergeSummary};
use super::notice::StoreEvent;
use super::photos::has_room;
use super::save_queue::SaveState;
use crate::lazy::{ChunkLoadError, Work, chunk};
use crate::platform::files::{ExportOutcome, FileParts, Incoming, Outgoing};
use crate::platform::{clock, ids, spawn_local};
use lastpull_core::exchange::{Backup, BackupProblem, BackupWriter, read_backup};
use lastpull_core::facts::{Draft, Entry, Journal};
use lastpull_core::ids::PhotoId;
use lastpull_core::journal::{Head, Storage, StorageFault, TooMany, assign_sequence};
use lastpull_core::photo::{JpegPhoto, PhotoStore, Photos};
use lastpull_core::shop::Shop;
use lastpull_core::time::{Millis, WallTime};
use leptos::prelude::*;
use send_wrapper::SendWrapper;
use std::collections::BTreeSet;
use std::time::Duration;

/// State of the export and the import.
#[derive(Clone, Default)]
pub struct BackupState {
    /// Whether an export or import is in progress.
    pub busy: bool,
    /// A file ready to be exported, created before the tap that exports it.
    pub ready: Option<BackupFile>,
    /// Result of the last import.
    pub imported: Option<Result<ImportSummary, ImportError>>,
}

/// A backup file ready to be exported.
#[derive(Clone)]
pub struct BackupFile {
    /// The file.
    pub file: SendWrapper<Outgoing>,
    /// Number of facts in it.
    pub facts: u64,
    /// Number of photos in it.
    pub photos: u32,
    /// Number of photos that the shop shows and the file lacks: they are not on this device, or do not fit.
    pub photos_left_out: u32,
    /// Facts in it that could not be saved on this device.
    pub rescued: Vec<Draft>,
}

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

chunk! {
    archive: fn split_make_backup(store: Store) -> Result<Work<Option<BackupFile>>, ChunkLoadError> {
        Ok(Box::pin(store.make_backup()))
    }
}

chunk! {
    archive: fn split_import_backup(store: Store, file: Incoming) -> Result<Work<Result<ImportSummary, ImportError>>, ChunkLoadError> {
        Ok(Box::pin(store.import_backup(file)))
    }
}

async fn make_backup_lazily(store: Store) -> Result<Option<BackupFile>, ChunkLoadError> {
    Ok(split_make_backup(store).await?.await)
}

async fn import_backup_lazily(
    store: Store,
    file: Incoming,
) -> Result<Result<ImportSummary, ImportError>, ChunkLoadError> {
    Ok(split_import_backup(store, file).await?.await)
}

impl Store {
    /// Makes the backup file: everything stored, and facts that could not be saved.
    pub fn prepare_backup(self) {
        self.setters().backup.update(|backup| {
            backup.busy = true;
            backup.ready = None;
        });
        spawn_local(async move {
            // Lets the page show the progress before the packing blocks the thread.
            clock::wait(Duration::from_millis(20)).await;
            let ready = self.make_backup_later().await;
            self.setters().backup.update(|backup| {
                backup.busy = false;
                backup.ready = ready;
            });
        });
    }

    async fn make_backup_later(self) -> Option<BackupFile> {
        let made = make_backup_lazily(self).await;
        if made.is_err() {
            self.notify_event(StoreEvent::ChunkNotLoaded);
        }
        made.ok().flatten()
    }

    /// Makes the backup file. Runs in the chunk.
    pub(crate) async fn make_backup(self) -> Option<BackupFile> {
        self.flush().await;
        let storage = self.storage.get_value();
        // If the storage cannot be read, export the entries that this page has seen.
        let mut entries = storage.read_all().await.unwrap_or_else(|_| self.recent.get_value());
        // Only facts on which saving has given up: others are about to be stored, and would count twice.
        let blocked = matches!(self.saving.get_untracked(), SaveState::Blocked(_));
        let rescued: Vec<Draft> = self.pending.with_untracked(|waiting| {
            waiting.iter().filter(|_| blocked).map(|waiting| waiting.draft.clone()).collect()
        });
        // Under a new device id: they have no sequence number of this device yet.
        entries.extend(assign_sequence(&mut Head::default(), ids::new_id(), &rescued));
        let clock = clock::now();
        let (mut out, first) = BackupWriter::new(&entries, clock.now).ok()?;
        let mut parts = FileParts::default();
        parts.add(&first)?;
        let mut photos = 0;
        let stored = storage.photos().await.unwrap_or_default();
        let shown = photos_of(entries.clone());
        for id in shown.ids().intersection(&stored) {
            // One at a time: a phone need not hold hundreds in memory.
            let bytes = storage.photo(*id).await.ok().flatten();
            let Some(photo) = bytes.and_then(JpegPhoto::of).filter(|photo| photo.id() == *id) else { continue };
            let Some(before) = out.photo(&photo) else { break };
            parts.add(&before)?;
            parts.add(photo.bytes())?;
            photos += 1;
        }
        parts.add(&out.finish())?;
        let photos_left_out = shown.total().count - photos;
        let minutes = clock.minutes_after_midnight(clock.now);
        let name = format!("lastpull-{}-{:02}{:02}.zip", clock.today(), minutes / 60, minutes % 60);
        let file = SendWrapper::new(Outgoing::new(&name, &parts)?);
        Some(BackupFile { file, facts: entries.len() as u64, photos, photos_left_out, rescued })
    }

    /// Exports the prepared file, by sharing or as a download. Call it during the tap itself.
    pub fn send_backup(self, share: bool) {
        let Some(ready) = self.backup.with_untracked(|backup| backup.ready.clone()) else { return };
        spawn_local(async move {
            let left = if share { ready.file.share().await } else { ready.file.download() };
            if matches!(left, ExportOutcome::Shared | ExportOutcome::Downloaded) {
                if !ready.rescued.is_empty() {
                    // They are in the file now; if saved here too, they would count twice after an import of the file.
                    self.setters().pending.update(|waiting| {
                        for draft in &ready.rescued {
                            if let Some(at) = waiting.iter().position(|waiting| waiting.draft == *draft) {
                                waiting.remove(at);
                            }
                        }
                    });
                    self.retry_save();
                }
                self.update_settings(|settings| {
                    settings.backed_up = Some(clock::now().now);
                    settings.backed_up_facts = ready.facts;
                });
                self.setters().backup.update(|backup| backup.ready = None);
            }
        });
    }

    /// Downloads everything that can still be read, if the shop cannot be opened.
    pub fn rescue(self) {
        spawn_local(async move {
            if let Some(ready) = self.make_backup_later().await {
                ready.file.download();
            }
        });
    }

    /// Imports a backup file: all of it or nothing.
    pub fn import(self, file: Option<Incoming>) {
        self.setters().backup.update(|backup| {
            backup.busy = true;
            backup.imported = None;
        });
        spawn_local(async move {
            clock::wait(Duration::from_millis(20)).await;
            let imported = match file {
                Some(file) => match import_backup_lazily(self, file).await {
                    Ok(imported) => imported,
                    Err(ChunkLoadError) => Err(ImportError::ChunkNotLoaded),
                },
                None => Err(ImportError::NotRead),
            };
            self.setters().backup.update(|backup| {
                backup.busy = false;
                backup.imported = Some(imported);
            });
        });
    }

    /// Imports a backup file. Runs in the chunk.
    pub(crate) async fn import_backup(self, file: Incoming) -> Result<ImportSummary, ImportError> {
        let mut backup = read_backup(file).await.map_err(refused)?;
        let storage = self.storage.get_value();
        let arriving = std::mem::take(&mut backup.entries);
        let mut all = storage.read_all().await.map_err(ImportError::Storage)?;
        all.extend_from_slice(&arriving);
        let shown = photos_of(all).ids();
        let mut photo_import = PhotoImport { at: clock::now().now, new: Vec::new() };
        // The photos first, then the facts that name them.
        let imported = match self.import_photos(&backup, &shown, &mut photo_import).await {
            Ok(()) => self.merge(arriving).await.map_err(|error| match error {
                MergeError::TooMany(many) => ImportError::TooMany(many),
                MergeError::Storage(fault) => ImportError::Storage(fault),
                MergeError::ChunkNotLoaded => ImportError::ChunkNotLoaded,
            }),
            Err(error) => Err(error),
        };
        let facts = match imported {
            Ok(facts) => facts,
            Err(error) => {
                // Delete what this import added; photos that were kept again since then stay.
                let _ = storage.delete_photos(&photo_import.new, photo_import.at + Millis::from_ms(1)).await;
                return Err(error);
            }
        };
        let stored = storage.photos().await.unwrap_or_default();
        let photos_missing = shown.difference(&stored).count() as u32;
        self.refresh_persistence();
        Ok(ImportSummary { facts, photos: photo_import.new.len() as u32, photos_missing })
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

fn refused(problem: BackupProblem) -> ImportError {
    if problem == BackupProblem::NotRead { ImportError::NotRead } else { ImportError::File(problem) }
}

/// The photos that a shop of these entries shows.
fn photos_of(entries: Vec<Entry>) -> Photos {
    Shop::fold(&Journal::stored(entries)).photos
}
