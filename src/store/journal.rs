//! Opening the journal: the checkpoint and what came after it, or everything where that will not do.

use super::{BackupState, DEMO, SHOP, Store};
use crate::platform::disk::Disk;
use crate::platform::indexed_db::IndexedDb;
use crate::platform::spawn_local;
use crate::platform::tabs::{self, Heard};
use crate::platform::{clock, settings};
use lastpull_core::journal::{Checkpoint, Conflict, Entry, Opened, Storage, StorageFault};
use lastpull_core::photo::Photos;
use lastpull_core::shop::Shop;
use leptos::prelude::*;
use std::time::Duration;

/// How opening the journal goes.
#[derive(Clone, Debug, PartialEq)]
pub enum Loading {
    /// Reading.
    Reading,
    /// Ready to work.
    Ready,
    /// It does not open. Nothing was written.
    Failed(StorageFault),
}

/// Entries in the tail from which it is packed. Opening reads a tail of this size in a few
/// milliseconds.
const LONG_TAIL: usize = 400;

/// What opening came to.
pub(crate) struct Folded {
    pub(crate) opened: Opened,
    pub(crate) shop: Shop,
    /// Whether the checkpoint could not be used.
    pub(crate) from_scratch: bool,
}

/// Reads and folds what is stored.
pub(super) async fn read(storage: &IndexedDb) -> Result<Folded, StorageFault> {
    let opened = storage.open().await?;
    let saved = opened.checkpoint.as_ref().and_then(Checkpoint::shop);
    if let Some(mut shop) = saved.or_else(|| opened.checkpoint.is_none().then(Shop::default)) {
        // The facts counted must be the facts stored, or something is missing under the checkpoint.
        if shop.apply_all(&opened.tail) && shop.facts() == opened.head.coverage.len() {
            return Ok(Folded { opened, shop, from_scratch: false });
        }
    }
    crate::later::read_whole(storage.clone(), opened).await.unwrap_or_else(|_| Err(not_loaded()))
}

fn not_loaded() -> StorageFault {
    StorageFault::Other(crate::words::part_failed_text().into())
}

impl Store {
    /// Opens the shop's journal, or the demo's.
    pub fn open(self) {
        let demo = self.settings.with_untracked(|settings| settings.demo);
        let name = if demo { DEMO } else { SHOP };
        self.storage.set_value(IndexedDb::new(name).beside(Disk::of_page()));
        self.loading.set(Loading::Reading);
        tabs::listen(name, move |heard| self.hear(heard));
        spawn_local(async move {
            match self.reload().await {
                Ok(from_scratch) => {
                    self.loading.set(Loading::Ready);
                    let long = self.recent.with_value(Vec::len) >= LONG_TAIL;
                    let photos = self.shop.with_untracked(|shop| shop.photos != Photos::default());
                    if from_scratch || long || photos {
                        clock::after(Duration::from_millis(2500), move || self.tidy(from_scratch || long));
                    }
                }
                Err(fault) => self.loading.set(Loading::Failed(fault)),
            }
        });
    }

    /// Reads the journal again from what is stored. Says whether the checkpoint was of no use.
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

    /// Takes saved entries into the shop on screen; reads anew where they do not follow on.
    pub(super) fn take_in(self, entries: &[Entry]) {
        self.recent.update_value(|recent| recent.extend_from_slice(entries));
        let mut follows = false;
        self.shop.update(|shop| follows = shop.apply_all(entries));
        if !follows {
            self.reload_later();
        }
    }

    fn reload_later(self) {
        spawn_local(async move {
            if let Err(fault) = self.reload().await {
                self.loading.set(Loading::Failed(fault));
            }
        });
    }

    fn hear(self, heard: Heard) {
        match heard {
            Heard::Saved(entries) => self.take_in(&entries),
            Heard::Changed => self.reload_later(),
        }
    }

    /// Packs a long tail and saves the fold, and forgets photos that nothing shows. Never needed for safety; a
    /// failure is left for next time.
    pub(super) fn tidy(self, long: bool) {
        spawn_local(async move {
            let _ = crate::later::tidy(self, long).await;
        });
    }

    /// Opens the demo shop beside the shop's own.
    pub fn enter_demo(self, device_name: String) {
        spawn_local(async move {
            // What waits belongs to the shop's own journal.
            if !self.settle().await {
                return;
            }
            let Ok(facts) = crate::later::demo_facts_later().await else {
                self.tell(crate::words::part_failed_text());
                return;
            };
            self.set(crate::platform::settings::Settings::shelve);
            self.backup.set(BackupState::default());
            let storage = IndexedDb::new(DEMO);
            let filled = async {
                storage.erase().await?;
                let device = storage.open().await?.device;
                let mut drafts = facts(clock::now(), device, &device_name);
                drafts.sort_by_key(|draft| draft.at);
                storage.append(&drafts).await.map(drop)
            };
            match filled.await {
                Ok(()) => self.open(),
                Err(fault) => self.loading.set(Loading::Failed(fault)),
            }
        });
    }

    /// Leaves the demo shop and forgets it wholly.
    pub fn leave_demo(self) {
        let storage = self.storage.get_value();
        self.set(crate::platform::settings::Settings::unshelve);
        self.backup.set(BackupState::default());
        self.waiting.set(Vec::new());
        self.shop.set(Shop::default());
        self.notice.set(None);
        spawn_local(async move {
            // Emptied first: should another tab hold the database open, only its empty shell waits.
            let _ = storage.erase().await;
            tabs::tell_changed();
            self.open();
            self.tell(crate::words::demo_left());
            let _ = storage.delete().await;
        });
    }

    /// Forgets a demo shop that a killed browser left behind.
    pub(super) fn forget_stray_demo(self) {
        if !self.settings.with_untracked(|settings| settings.demo) {
            spawn_local(async move {
                let _ = IndexedDb::new(DEMO).delete().await;
            });
        }
    }

    /// Forgets everything this device holds, of the shop and its settings.
    pub fn erase_all(self) {
        let storage = self.storage.get_value();
        spawn_local(async move {
            match storage.erase().await {
                Ok(()) => {
                    settings::forget();
                    self.settings.set(settings::load());
                    self.backup.set(BackupState::default());
                    self.waiting.set(Vec::new());
                    tabs::tell_changed();
                    crate::platform::dom::set_hash("");
                    self.open();
                }
                Err(fault) => self.loading.set(Loading::Failed(fault)),
            }
        });
    }
}

/// What a file brought.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Arrived {
    /// Facts that were new here.
    pub new: u64,
    /// Facts that were here already.
    pub known: u64,
    /// Facts that are missing in between.
    pub gaps: u64,
    /// Facts dated further ahead than clocks drift.
    pub far_ahead: u64,
}

/// Why a file was not taken in.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum AbsorbError {
    /// It contradicts what is here.
    Conflict(Conflict),
    /// It could not be stored.
    Storage(StorageFault),
}
