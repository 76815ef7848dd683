//! Opening the journal: from the checkpoint and the entries after it, or from all entries if that fails.

use super::backup::BackupState;
use super::load::{LoadError, has_unknown, read};
use super::{DEMO, SHOP, Store};
use crate::platform::indexed_db::IndexedDb;
use crate::platform::journal_worker::JournalWorker;
use crate::platform::tabs::TabMessage;
use crate::platform::{clock, settings, spawn_local, tabs};
use lastpull_core::facts::Entry;
use lastpull_core::journal::{Storage, StorageFault};
use lastpull_core::photo::Photos;
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
    Failed(LoadError),
}

/// Length of the tail, in entries, from which it is compacted. Reading a tail of this length takes a few
/// milliseconds.
const LONG_TAIL: usize = 400;

impl Store {
    /// Opens the shop's journal, or the demo's.
    pub fn open(self) {
        let demo = self.settings.with_untracked(|settings| settings.demo);
        let name = if demo { DEMO } else { SHOP };
        self.storage.set_value(IndexedDb::new(name).with_worker(JournalWorker::of_page()));
        self.setters().loading.set(Loading::Reading);
        tabs::listen(name, move |message| self.on_tab_message(message));
        spawn_local(async move {
            match self.reload().await {
                Ok(from_scratch) => {
                    self.setters().loading.set(Loading::Ready);
                    let long = self.recent.with_value(Vec::len) >= LONG_TAIL;
                    let photos = self.shop.with_untracked(|shop| shop.photos != Photos::default());
                    if from_scratch || long || photos {
                        clock::after(Duration::from_millis(2500), move || self.compact(from_scratch || long));
                    }
                }
                Err(error) => self.setters().loading.set(Loading::Failed(error)),
            }
        });
    }

    /// Reads the journal again from the storage. Returns whether the checkpoint could not be used.
    pub(super) async fn reload(self) -> Result<bool, LoadError> {
        let storage = self.storage.get_value();
        let mut tries = 0;
        let folded = loop {
            match read(&storage).await {
                Err(LoadError::Storage(StorageFault::Stale)) if tries < 3 => tries += 1,
                other => break other?,
            }
        };
        self.setters().device.set(folded.opened.device);
        self.recent.set_value(folded.opened.tail);
        self.setters().shop.set(folded.shop);
        Ok(folded.from_scratch)
    }

    /// Adds saved entries to the shop on screen; reads everything again if they do not follow the last ones.
    pub(super) fn apply_saved(self, entries: &[Entry]) {
        self.recent.update_value(|recent| recent.extend_from_slice(entries));
        let mut follows = false;
        self.setters().shop.update(|shop| follows = shop.apply_all(entries));
        if !follows {
            self.spawn_reload();
        }
    }

    fn spawn_reload(self) {
        spawn_local(async move {
            // The shop on screen stays: a page that works is not replaced because reading it again failed.
            if let Err(error) = self.reload().await
                && self.loading.with_untracked(|loading| *loading != Loading::Ready)
            {
                self.setters().loading.set(Loading::Failed(error));
            }
        });
    }

    fn on_tab_message(self, message: TabMessage) {
        match message {
            // Another version's tab: what this one knows of them is read again from the storage.
            TabMessage::Saved(entries) if has_unknown(&entries) => self.spawn_reload(),
            TabMessage::Saved(entries) => self.apply_saved(&entries),
            TabMessage::Changed => self.spawn_reload(),
        }
    }

    /// Erases everything on this device: the shop and its settings.
    pub fn erase_all(self) {
        let storage = self.storage.get_value();
        spawn_local(async move {
            match storage.erase().await {
                Ok(()) => {
                    settings::forget();
                    self.setters().settings.set(settings::load());
                    self.setters().backup.set(BackupState::default());
                    self.setters().pending.set(Vec::new());
                    tabs::notify_changed();
                    crate::platform::dom::set_hash("");
                    self.open();
                }
                Err(fault) => self.setters().loading.set(Loading::Failed(fault.into())),
            }
        });
    }
}
