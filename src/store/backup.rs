//! Exporting the backup file.

use super::Store;
use super::import::{ImportError, ImportSummary};
pub use super::long_work::backup::BackupFailure;
use super::long_work::backup::{Contents, Order, make, records};
use super::long_work::{Asked, MANY_FACTS, Task, Watch, from_answer};
use super::notice::StoreEvent;
use super::save_queue::SaveState;
use crate::lazy::{ChunkLoadError, Work, chunk};
use crate::platform::app_worker::Ended;
use crate::platform::files::{ExportOutcome, Outgoing};
use crate::platform::{clock, ids, spawn_local};
use lastpull_core::exchange::ImportPreview;
use lastpull_core::facts::{Draft, Entry};
use lastpull_core::journal::{Head, assign_sequence};
use lastpull_core::time::WallTime;
use leptos::prelude::*;
use send_wrapper::SendWrapper;
use std::time::Duration;
use wasm_bindgen::JsValue;

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
    /// Wall time of the last import, if what it brought can be taken back.
    pub can_take_back: Option<WallTime>,
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

chunk! {
    archive: fn split_make_backup(store: Store) -> Result<Work<Made>, ChunkLoadError> {
        Ok(Box::pin(store.make_backup()))
    }
}

/// The file; `None` if the user cancelled the work.
type Made = Option<Result<BackupFile, BackupFailure>>;

async fn make_backup_lazily(store: Store) -> Result<Made, ChunkLoadError> {
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
                    Ok(Some(Ok(ready))) => backup.ready = Some(ready),
                    Ok(Some(Err(failure))) => backup.failure = Some(failure),
                    Ok(None) | Err(ChunkLoadError) => {}
                }
            });
        });
    }

    /// Makes the backup file. Runs in the chunk.
    async fn make_backup(self) -> Made {
        self.flush().await;
        let storage = self.storage.get_value();
        let (rescued, exported) = self.export_blocked();
        let clock = clock::now();
        let time = clock.time_of_day(clock.now);
        let order = Order {
            name: format!("lastpull-{}-{:02}{:02}.zip", clock.today(), time.hour(), time.minute()),
            demo: self.settings.with_untracked(|settings| settings.demo),
            now: clock.now,
            seen: self.recent.with_value(|recent| records(recent)),
            unsaved: records(&exported),
        };
        let mut made = None;
        if self.shop.with_untracked(lastpull_core::shop::Shop::fact_count) >= MANY_FACTS {
            let task = Task::Backup { database: storage.name(), order: order.clone() };
            let asked = self.start_work(&task, &JsValue::UNDEFINED).await;
            self.end_work(Ended::Failed);
            match asked {
                Asked::Answered(answer) => {
                    made = from_answer::<Contents, BackupFailure>(&answer.bytes).and_then(|contents| match contents {
                        Ok(contents) => Outgoing::of_value(&answer.file).map(|file| Ok((file, contents))),
                        Err(failure) => Some(Err(failure)),
                    });
                }
                Asked::Cancelled => return None,
                Asked::NotDone => {}
            }
        }
        let made = match made {
            Some(made) => made,
            None => make(&storage, &order, &Watch::none()).await,
        };
        Some(made.map(|(file, contents)| BackupFile {
            file: SendWrapper::new(file),
            facts: contents.facts,
            facts_of: contents.expected,
            unreadable: contents.unreadable,
            whole: contents.whole,
            photos: contents.photos,
            photos_left_out: contents.photos_left_out,
            photos_too_many: contents.photos_too_many,
            rescued,
        }))
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
        // Those that may be stored after all keep the numbers that they have then: in the file they are the same entries.
        let mut in_doubt = self.storage.get_value().give_up_append().into_iter().peekable();
        for pending in waiting.iter_mut().filter(|pending| pending.exported.is_none()) {
            let draft: &Draft = &pending.draft;
            let is_same = |entry: &Entry| (entry.at, entry.subject) == (draft.at, draft.subject);
            pending.exported = match in_doubt.next_if(is_same) {
                Some(entry) => Some(Entry { fact: draft.fact.clone(), ..entry }),
                None => assign_sequence(&mut head, device, std::slice::from_ref(draft)).pop(),
            };
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
