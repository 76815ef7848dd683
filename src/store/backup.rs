//! Exporting the backup file.

use super::Store;
use super::archive::photos_of;
use super::import::{ImportError, ImportSummary};
use super::notice::StoreEvent;
use super::save_queue::SaveState;
use crate::lazy::{ChunkLoadError, Work, chunk};
use crate::platform::files::{ExportOutcome, FileParts, Outgoing};
use crate::platform::{clock, ids, spawn_local};
use lastpull_core::exchange::{BackupProblem, BackupWriter, ImportPreview, read_backup};
use lastpull_core::facts::{Draft, Entry, Fact};
use lastpull_core::journal::{Head, Salvage, Storage, StorageFault, StoredValue, assign_sequence};
use lastpull_core::photo::{JpegPhoto, PhotoStore};
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
    /// Whether that file was handed to the browser. Only the user can see whether it arrived.
    pub sent: bool,
    /// Why there is no file.
    pub failure: Option<BackupFailure>,
    /// What the picked file would bring.
    pub preview: Option<ImportPreview>,
    /// Result of the last import.
    pub imported: Option<Result<ImportSummary, ImportError>>,
    /// Whether what it brought can be taken back.
    pub can_take_back: bool,
    /// Result of taking it back: the number of facts.
    pub taken_back: Option<Result<u64, ImportError>>,
}

/// A backup file ready to be exported. It was read back.
#[derive(Clone)]
pub struct BackupFile {
    /// The file.
    pub file: SendWrapper<Outgoing>,
    /// Number of facts in it.
    pub facts: u64,
    /// Number of facts that should be in it; `None` if the storage does not say.
    pub facts_of: Option<u64>,
    /// Number of stored values that do not decode and are in it as they are.
    pub unreadable: u32,
    /// Whether everything stored is in it.
    pub whole: bool,
    /// Number of photos in it.
    pub photos: u32,
    /// Number of photos that the shop shows and the file lacks because they are not on this device.
    pub photos_left_out: u32,
    /// Number of photos on this device that do not fit into the file.
    pub photos_too_many: u32,
    /// The pending facts in it, by their number.
    pub rescued: Vec<u64>,
}

/// Why no backup file was made.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum BackupFailure {
    /// Nothing could be read from the storage.
    NothingRead(StorageFault),
    /// The file was made, and could not be read back.
    NotReadBack(BackupProblem),
    /// The browser refused to make a file of it.
    NotMade,
}

chunk! {
    archive: fn split_make_backup(store: Store) -> Result<Work<Result<BackupFile, BackupFailure>>, ChunkLoadError> {
        Ok(Box::pin(store.make_backup()))
    }
}

async fn make_backup_lazily(store: Store) -> Result<Result<BackupFile, BackupFailure>, ChunkLoadError> {
    Ok(split_make_backup(store).await?.await)
}

impl Store {
    /// Makes the backup file: everything stored that can be read, and facts that could not be saved.
    pub fn prepare_backup(self) {
        self.setters().backup.update(|backup| {
            backup.busy = true;
            (backup.ready, backup.sent, backup.failure) = (None, false, None);
        });
        spawn_local(async move {
            // Lets the page show the progress before the packing blocks the thread.
            clock::wait(Duration::from_millis(20)).await;
            let made = make_backup_lazily(self).await;
            if made.is_err() {
                self.notify_event(StoreEvent::ChunkNotLoaded);
            }
            self.setters().backup.update(|backup| {
                backup.busy = false;
                match made {
                    Ok(Ok(ready)) => backup.ready = Some(ready),
                    Ok(Err(failure)) => backup.failure = Some(failure),
                    Err(ChunkLoadError) => {}
                }
            });
        });
    }

    /// Makes the backup file. Runs in the chunk.
    pub(crate) async fn make_backup(self) -> Result<BackupFile, BackupFailure> {
        self.flush().await;
        let mut check_lines = false;
        loop {
            match self.make_backup_once(check_lines).await {
                // A line that no Lastpull reads: leave it out, and keep it beside the others.
                Err(BackupFailure::NotReadBack(_)) if !check_lines => check_lines = true,
                other => return other,
            }
        }
    }

    async fn make_backup_once(self, check_lines: bool) -> Result<BackupFile, BackupFailure> {
        let storage = self.storage.get_value();
        let salvage: Salvage<Fact> = storage.read_raw().await.salvage();
        let (whole, stored, fault) = (salvage.is_whole(), salvage.facts_stored(), salvage.fault.clone());
        let (mut entries, mut unreadable) = (salvage.entries, salvage.unreadable);
        if !whole {
            // What this page has seen may be more than what can be read again.
            entries.extend(self.recent.get_value());
        }
        let (rescued, exported) = self.export_blocked();
        let rescued_count = exported.len() as u64;
        entries.extend(exported);
        let unwritable = if check_lines { take_unwritable(&mut entries) } else { Vec::new() };
        let whole = whole && unwritable.is_empty();
        unreadable.extend(unwritable);
        if entries.is_empty() && unreadable.is_empty() && fault.is_some() {
            return Err(BackupFailure::NothingRead(fault.unwrap_or(StorageFault::Closed)));
        }
        let clock = clock::now();
        let demo = self.settings.with_untracked(|settings| settings.demo);
        let start =
            if demo { BackupWriter::of_demo(&entries, clock.now) } else { BackupWriter::new(&entries, clock.now) };
        let (mut out, first) = start.map_err(|_| BackupFailure::NotMade)?;
        let mut parts = FileParts::default();
        let mut add = |bytes: &[u8]| parts.add(bytes).ok_or(BackupFailure::NotMade);
        add(&first)?;
        for (name, bytes) in &unreadable {
            if let Some(before) = out.unreadable(name, bytes) {
                add(&before)?;
                add(bytes)?;
            }
        }
        let on_device = storage.photos().await.unwrap_or_default();
        let shown = photos_of(&entries, clock.now);
        // Facts that cannot be read may name any photo.
        let packed = if whole { shown.intersection(&on_device).copied().collect() } else { on_device.clone() };
        let (mut photos, mut photos_too_many) = (BTreeSet::new(), 0);
        for id in packed {
            // One at a time: a phone need not hold hundreds in memory.
            let bytes = storage.photo(id).await.ok().flatten();
            let Some(photo) = bytes.and_then(JpegPhoto::of).filter(|photo| photo.id() == id) else { continue };
            let Some(before) = out.photo(&photo) else {
                photos_too_many += 1;
                continue;
            };
            add(&before)?;
            add(photo.bytes())?;
            photos.insert(id);
        }
        add(&out.finish())?;
        let photos_left_out = (shown.difference(&photos).count() as u32).saturating_sub(photos_too_many);
        let minutes = clock.minutes_after_midnight(clock.now);
        let name = format!("lastpull-{}-{:02}{:02}.zip", clock.today(), minutes / 60, minutes % 60);
        let file = Outgoing::new(&name, &parts).ok_or(BackupFailure::NotMade)?;
        // Not held while the file is read back: that takes as much memory again.
        drop(entries);
        let read_back = read_backup(file.to_incoming()).await.map_err(BackupFailure::NotReadBack)?;
        Ok(BackupFile {
            file: SendWrapper::new(file),
            facts: read_back.entries.len() as u64,
            facts_of: stored.map(|stored| stored + rescued_count),
            unreadable: unreadable.len() as u32,
            whole,
            photos: photos.len() as u32,
            photos_left_out,
            photos_too_many,
            rescued,
        })
    }

    /// The pending facts on which saving has given up, by their number, and the entries as which they are exported.
    /// Others are about to be saved.
    fn export_blocked(self) -> (Vec<u64>, Vec<Entry>) {
        if !matches!(self.saving.get_untracked(), SaveState::Blocked(_)) {
            return (Vec::new(), Vec::new());
        }
        let (device, mut head) = self
            .session
            .with_value(|session| session.rescue.clone())
            .unwrap_or_else(|| (ids::new_id(), Head::default()));
        let mut waiting = self.pending.get_untracked();
        for pending in &mut waiting {
            if pending.exported.is_none() {
                let draft: &Draft = &pending.draft;
                pending.exported = assign_sequence(&mut head, device, std::slice::from_ref(draft)).pop();
            }
        }
        self.session.update_value(|session| session.rescue = Some((device, head)));
        let exported = waiting.iter().filter_map(|pending| Some((pending.id, pending.exported.clone()?))).unzip();
        self.setters().pending.update(|pending| {
            // Facts may have been recorded meanwhile: only the marks are taken over.
            for pending in pending {
                if let Some(marked) = waiting.iter().find(|marked| marked.id == pending.id) {
                    pending.exported.clone_from(&marked.exported);
                }
            }
        });
        exported
    }

    /// Exports the prepared file, by sharing or as a download. Call it during the tap itself.
    pub fn send_backup(self, share: bool) {
        let Some(ready) = self.backup.with_untracked(|backup| backup.ready.clone()) else { return };
        spawn_local(async move {
            let left = if share { ready.file.share().await } else { ready.file.download() };
            if matches!(left, ExportOutcome::Shared | ExportOutcome::Downloaded) {
                self.setters().backup.update(|backup| backup.sent = backup.ready.is_some());
            }
        });
    }

    /// The user says that the exported file is there: now it counts as a backup, and what could not be saved here
    /// leaves this page.
    pub fn confirm_backup(self) {
        let Some(ready) = self.backup.with_untracked(|backup| backup.ready.clone().filter(|_| backup.sent)) else {
            return;
        };
        if !ready.rescued.is_empty() {
            self.setters().pending.update(|pending| pending.retain(|pending| !ready.rescued.contains(&pending.id)));
            self.retry_save();
        }
        if ready.whole {
            self.update_settings(|settings| {
                settings.backed_up = Some(clock::now().now);
                settings.backed_up_facts = ready.facts.saturating_sub(ready.rescued.len() as u64);
            });
        }
        self.setters().backup.update(|backup| (backup.ready, backup.sent) = (None, false));
    }
}

/// Takes out the entries that no Lastpull would read from a file, and returns them as values of their own.
fn take_unwritable(entries: &mut Vec<Entry>) -> Vec<StoredValue> {
    let mut unwritable = Vec::new();
    entries.retain(|entry| {
        let line = entry.to_line();
        let reads = Entry::from_line(&line).is_ok();
        if !reads {
            unwritable.push((format!("line-{}-{}", entry.device, entry.seq), line.into_bytes()));
        }
        reads
    });
    unwritable
}
