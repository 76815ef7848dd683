//! Opening the journal: from the checkpoint and the entries after it, or from all entries if that fails.

use super::archive::{compact_lazily, read_all_lazily};
use super::backup::BackupState;
use super::{DEMO, SHOP, Store};
use crate::platform::indexed_db::IndexedDb;
use crate::platform::journal_worker::JournalWorker;
use crate::platform::tabs::TabMessage;
use crate::platform::{clock, settings, spawn_local, tabs};
use lastpull_core::facts::{Entry, Opened};
use lastpull_core::journal::{Checkpoint, Conflict, Storage, StorageFault};
use lastpull_core::photo::Photos;
use lastpull_core::shop::Shop;
use leptos::prelude::*;
use std::time::Duration;

/// State of opening the journal.
#[derive(Clone, Debug, PartialEq)]
pub enum Loading {
    /// Reading.
    Reading,
    /// Ready to work.
    Ready,
    /// It cannot be opened. Nothing was written.
    Failed(StorageFault),
}

/// Length of the tail, in entries, from which it is compacted. Reading a tail of this length takes a few
/// milliseconds.
const LONG_TAIL: usize = 400;

/// The shop as read from the storage.
pub(crate) struct LoadedShop {
    pub(crate) opened: Opened,
    pub(crate) shop: Shop,
    /// Whether the checkpoint could not be used.
    pub(crate) from_scratch: bool,
}

/// Reads and folds what is stored.
pub(super) async fn read(storage: &IndexedDb) -> Result<LoadedShop, StorageFault> {
    let opened = storage.open().await?;
    let saved = opened.checkpoint.as_ref().and_then(Checkpoint::shop);
    if let Some(mut shop) = saved.or_else(|| opened.checkpoint.is_none().then(Shop::default)) {
        // The number of facts folded must be the number stored, or the checkpoint is missing some.
        if shop.apply_all(&opened.tail) && shop.fact_count() == opened.head.coverage.len() {
            return Ok(LoadedShop { opened, shop, from_scratch: false });
        }
    }
    read_all_lazily(storage.clone(), opened).await.unwrap_or_else(|_| Err(not_loaded()))
}

fn not_loaded() -> StorageFault {
    StorageFault::Other(crate::i18n::part_failed_text().into())
}

impl Store {
    /// Opens the shop's journal, or the demo's.
    pub fn open(self) {
        let demo = self.settings.with_untracked(|settings| settings.demo);
        let name = if demo { DEMO } else { SHOP };
        self.storage.set_value(IndexedDb::new(name).with_worker(JournalWorker::of_page()));
        self.loading.set(Loading::Reading);
        tabs::listen(name, move |message| self.on_tab_message(message));
        spawn_local(async move {
            match self.reload().await {
                Ok(from_scratch) => {
                    self.loading.set(Loading::Ready);
                    let long = self.recent.with_value(Vec::len) >= LONG_TAIL;
                    let photos = self.shop.with_untracked(|shop| shop.photos != Photos::default());
                    if from_scratch || long || photos {
                        clock::after(Duration::from_millis(2500), move || self.compact(from_scratch || long));
                    }
                }
                Err(fault) => self.loading.set(Loading::Failed(fault)),
            }
        });
    }

    /// Reads the journal again from the storage. Returns whether the checkpoint could not be used.
    pub(super) async fn reload(self) -> Result<bool, StorageFault> {
        let storage = self.storage.get_value();
        let mut tries = 0;
        let folded = loop {
            match read(&storage).await {
                Err(StorageFault::Stale) if tries < 3 => tries += 1,
                other => break other?,
            }
        };
        self.device.set(folded.opened.device);
        self.recent.set_value(folded.opened.tail);
        self.shop.set(folded.shop);
        Ok(folded.from_scratch)
    }

    /// Adds saved entries to the shop on screen; reads everything again if they do not follow the last ones.
    pub(super) fn apply_saved(self, entries: &[Entry]) {
        self.recent.update_value(|recent| recent.extend_from_slice(entries));
        let mut follows = false;
        self.shop.update(|shop| follows = shop.apply_all(entries));
        if !follows {
            self.spawn_reload();
        }
    }

    fn spawn_reload(self) {
        spawn_local(async move {
            if let Err(fault) = self.reload().await {
                self.loading.set(Loading::Failed(fault));
            }
        });
    }

    fn on_tab_message(self, message: TabMessage) {
        match message {
            TabMessage::Saved(entries) => self.apply_saved(&entries),
            TabMessage::Changed => self.spawn_reload(),
        }
    }

    /// Compacts a long tail, saves the checkpoint, and deletes photos that nothing shows. Safety never depends on it; a
    /// failed attempt is repeated at the next opening.
    pub(super) fn compact(self, long: bool) {
        spawn_local(async move {
            let _ = compact_lazily(self, long).await;
        });
    }

    /// Erases everything on this device: the shop and its settings.
    pub fn erase_all(self) {
        let storage = self.storage.get_value();
        spawn_local(async move {
            match storage.erase().await {
                Ok(()) => {
                    settings::forget();
                    self.settings.set(settings::load());
                    self.backup.set(BackupState::default());
                    self.pending.set(Vec::new());
                    tabs::notify_changed();
                    crate::platform::dom::set_hash("");
                    self.open();
                }
                Err(fault) => self.loading.set(Loading::Failed(fault)),
            }
        });
    }
}

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
}

/// Why entries were not merged.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum MergeError {
    /// They contradict the entries on this device.
    Conflict(Conflict),
    /// They could not be stored.
    Storage(StorageFault),
}
