//! Importing a backup file: it is read and described first, merged when the user says so, and can be taken back.

use super::Store;
use super::folded::LoadError;
pub use super::long_work::import::ImportError;
use super::long_work::import::{Imported, PickedFile, bring_in, describe, take_back};
use super::long_work::{Asked, LARGE_FILE, MANY_FACTS, Task, Watch, from_answer};
use crate::lazy::{ChunkLoadError, Work, chunk};
use crate::platform::app_worker::Ended;
use crate::platform::files::Incoming;
use crate::platform::{clock, spawn_local, tabs};
use lastpull_core::exchange::{ImportPreview, ImportRecord, Source};
use lastpull_core::facts::Fact;
use lastpull_core::photo::PhotoStore;
use lastpull_core::time::Millis;
use leptos::prelude::*;
use std::time::Duration;
use wasm_bindgen::JsValue;

/// What a merge added.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct MergeSummary {
    /// Number of facts that were new here.
    pub new: u64,
    /// Number of facts that were already here.
    pub known: u64,
    /// Number of facts missing in between.
    pub gaps: u64,
    /// Number of facts dated further ahead than clocks drift.
    pub far_ahead: u64,
    /// Number of times that two devices were found to have counted on under one id.
    pub forks: u64,
    /// Whether this device has a new id, because another one counted under its old one.
    pub renewed: bool,
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

/// A file that waits for the user's decision.
pub enum Picked {
    /// This page has read it.
    Here(PickedFile),
    /// The worker that runs has read it.
    InWorker(Incoming),
}

impl From<LoadError> for ImportError {
    fn from(error: LoadError) -> Self {
        match error {
            LoadError::Storage(fault) => Self::Storage(fault),
            LoadError::ChunkNotLoaded => Self::ChunkNotLoaded,
        }
    }
}

/// A result; `None` if the user cancelled the work.
type Unless<T> = Option<Result<T, ImportError>>;

chunk! {
    archive: fn split_read_file(store: Store, file: Incoming) -> Result<Work<Unless<ImportPreview>>, ChunkLoadError> {
        Ok(Box::pin(store.read_file(file)))
    }
}

chunk! {
    archive: fn split_import_picked(store: Store) -> Result<Work<Unless<ImportSummary>>, ChunkLoadError> {
        Ok(Box::pin(store.import_picked()))
    }
}

chunk! {
    archive: fn split_take_back(store: Store) -> Result<Work<Unless<u64>>, ChunkLoadError> {
        Ok(Box::pin(store.take_back_last_import()))
    }
}

/// Does work of the chunk.
async fn done<T>(work: Result<Work<Unless<T>>, ChunkLoadError>) -> Unless<T> {
    match work {
        Ok(work) => work.await,
        Err(ChunkLoadError) => Some(Err(ImportError::ChunkNotLoaded)),
    }
}

impl Store {
    /// Reads a picked file and says what it would bring. A file with no new fact is merged at once: it changes
    /// nothing, but may have photos.
    pub fn pick_file(self, file: Option<Incoming>) {
        self.forget_picked();
        self.setters().backup.update(|backup| {
            backup.busy = true;
            (backup.preview, backup.imported, backup.taken_back) = (None, None, None);
        });
        spawn_local(async move {
            // Lets the page show the progress before the reading blocks the thread.
            clock::wait(Duration::from_millis(20)).await;
            let read = match file {
                Some(file) => done(split_read_file(self, file).await).await,
                None => Some(Err(ImportError::NotRead)),
            };
            match read {
                Some(Ok(preview)) if preview.new == 0 => self.import_now().await,
                read => self.setters().backup.update(|backup| {
                    backup.busy = false;
                    match read {
                        Some(Ok(preview)) => backup.preview = Some(preview),
                        Some(Err(error)) => backup.imported = Some(Err(error)),
                        None => {}
                    }
                }),
            }
        });
    }

    /// Leaves the picked file alone.
    pub fn leave_file(self) {
        self.forget_picked();
        self.setters().backup.update(|backup| backup.preview = None);
    }

    /// Forgets the file that was picked, and ends the worker that holds it.
    pub(super) fn forget_picked(self) {
        if let Some(Picked::InWorker(_)) = self.session.try_update_value(|session| session.picked.take()).flatten() {
            self.end_work(Ended::Cancelled);
        }
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
        let imported = done(split_import_picked(self).await).await;
        self.forget_picked();
        let can_take_back =
            self.session.with_value(|session| session.last_import.as_ref().map(|last_import| last_import.at));
        self.setters().backup.update(|backup| {
            backup.busy = false;
            backup.can_take_back = can_take_back;
            backup.imported = imported;
        });
    }

    /// Finds out whether an import of an earlier session can be taken back.
    pub fn recall_import(self) {
        if self.session.with_value(|session| session.last_import.is_some()) {
            return;
        }
        let opened = self.opened();
        spawn_local(async move {
            let record = self.storage.get_value().import_record().await;
            // Meanwhile another shop may have been opened, or another file brought in.
            let is_late = opened != self.opened() || self.session.with_value(|session| session.last_import.is_some());
            let Some(record) = record.filter(|_| !is_late) else { return };
            let at = record.at;
            self.session.update_value(|session| session.last_import = Some(record));
            self.setters().backup.update(|backup| backup.can_take_back = Some(at));
        });
    }

    /// Takes back what the last import brought. What was recorded here since stays.
    pub fn take_back_import(self) {
        self.setters().backup.update(|backup| backup.busy = true);
        spawn_local(async move {
            clock::wait(Duration::from_millis(20)).await;
            let taken = done(split_take_back(self).await).await;
            self.setters().backup.update(|backup| {
                backup.busy = false;
                if let Some(Ok(_)) = taken {
                    (backup.imported, backup.can_take_back) = (None, None);
                }
                backup.taken_back = taken;
            });
        });
    }

    /// Reads a file. Runs in the chunk.
    async fn read_file(self, file: Incoming) -> Unless<ImportPreview> {
        let storage = self.storage.get_value();
        if file.size() >= LARGE_FILE || self.facts_here() >= MANY_FACTS {
            let demo = self.settings.with_untracked(|settings| settings.demo);
            let task = Task::Describe { database: storage.name(), demo };
            match self.start_work(&task, &file.value()).await {
                Asked::Answered(answer) => {
                    if let Some(described) = from_answer::<ImportPreview, ImportError>(&answer.bytes) {
                        if described.is_ok() {
                            self.session.update_value(|session| session.picked = Some(Picked::InWorker(file)));
                        } else {
                            self.end_work(Ended::Cancelled);
                        }
                        return Some(described);
                    }
                }
                Asked::Cancelled => return None,
                Asked::NotDone => {}
            }
            self.end_work(Ended::Failed);
        }
        let described = self.describe_here(file).await;
        Some(described.map(|(picked, preview)| {
            self.session.update_value(|session| session.picked = Some(Picked::Here(picked)));
            preview
        }))
    }

    /// Reads a file on the page.
    async fn describe_here(self, file: Incoming) -> Result<(PickedFile, ImportPreview), ImportError> {
        let storage = self.storage.get_value();
        let demo = self.settings.with_untracked(|settings| settings.demo);
        // The journal is read while another task may change the shop: the shop is taken as it is now.
        let shop = self.shop.get_untracked();
        describe(&storage, file, &shop, demo, &Watch::none()).await
    }

    /// Merges the picked file. Runs in the chunk.
    async fn import_picked(self) -> Unless<ImportSummary> {
        let picked = self.session.try_update_value(|session| session.picked.take()).flatten();
        let (storage, now) = (self.storage.get_value(), clock::now().now);
        let imported = match picked {
            None => return Some(Err(ImportError::NotRead)),
            Some(Picked::Here(picked)) => bring_in(&storage, picked, now, &Watch::none()).await,
            Some(Picked::InWorker(file)) => match self.continue_work(&Task::BringIn { now }, &JsValue::UNDEFINED).await
            {
                Asked::Cancelled => return None,
                asked @ (Asked::Answered(_) | Asked::NotDone) => {
                    self.end_work(Ended::Cancelled);
                    let imported = if let Asked::Answered(answer) = asked { from_answer(&answer.bytes) } else { None };
                    match imported {
                        Some(imported) => imported,
                        // The worker that had read it failed.
                        None => match self.describe_here(file).await {
                            Ok((picked, _)) => bring_in(&storage, picked, now, &Watch::none()).await,
                            Err(error) => Err(error),
                        },
                    }
                }
            },
        };
        match imported {
            Ok(imported) => Some(self.show_imported(imported).await),
            Err(error) => Some(Err(error)),
        }
    }

    /// Shows what was merged, and keeps what it takes to take it back.
    async fn show_imported(self, imported: Imported) -> Result<ImportSummary, ImportError> {
        let Imported { merged, photos, photos_missing, at } = imported;
        let device = self.device.get_untracked();
        if merged.new > 0 || merged.renewed.is_some() {
            self.reload().await.map_err(ImportError::from)?;
            tabs::notify_changed();
        }
        if let Some(new) = merged.renewed
            && let Some(name) = self.shop.with_untracked(|shop| shop.devices.get(&device).cloned())
        {
            self.record(new, Fact::DeviceNamed(name));
        }
        let facts = MergeSummary {
            new: merged.new,
            known: merged.known,
            gaps: merged.gaps,
            far_ahead: merged.far_ahead,
            forks: merged.forks.len() as u64,
            renewed: merged.renewed.is_some(),
        };
        let photos_new = photos.len() as u32;
        if facts.new > 0 {
            // Facts of this device's own id are among them only if its next number is not: it has a new id otherwise.
            let last_import = ImportRecord { facts: merged.added, photos, at };
            // If it cannot be kept, it can be taken back as long as the app is open.
            let _ = self.storage.get_value().set_import_record(Some(&last_import)).await;
            self.session.update_value(|session| session.last_import = Some(last_import));
        }
        self.refresh_persistence();
        Ok(ImportSummary { facts, photos: photos_new, photos_missing })
    }

    /// Takes the last import back: all of it or nothing. Runs in the chunk.
    async fn take_back_last_import(self) -> Unless<u64> {
        let Some(last_import) = self.session.with_value(|session| session.last_import.clone()) else {
            return Some(Err(ImportError::NotRead));
        };
        self.flush().await;
        let storage = self.storage.get_value();
        let mut taken = None;
        if self.facts_here() >= MANY_FACTS {
            let task = Task::TakeBack { database: storage.name(), facts: last_import.facts.clone() };
            let asked = self.start_work(&task, &JsValue::UNDEFINED).await;
            self.end_work(Ended::Failed);
            match asked {
                Asked::Answered(answer) => taken = from_answer(&answer.bytes),
                Asked::Cancelled => return None,
                Asked::NotDone => {}
            }
        }
        let taken = match taken {
            Some(taken) => taken,
            None => take_back(&storage, &last_import.facts, &Watch::none()).await,
        };
        let gone = match taken {
            Ok(gone) => gone,
            Err(fault) => return Some(Err(ImportError::Storage(fault))),
        };
        self.session.update_value(|session| session.last_import = None);
        let _ = storage.set_import_record(None).await;
        let _ = storage.delete_photos(&last_import.photos, last_import.at + Millis::from_ms(1)).await;
        if let Err(error) = self.reload().await {
            return Some(Err(error.into()));
        }
        if self.facts_here() == 0 {
            // The user removed them, not the browser.
            self.update_settings(|settings| settings.has_facts = false);
        }
        tabs::notify_changed();
        self.refresh_persistence();
        Some(Ok(gone))
    }
}
