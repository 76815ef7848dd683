//! The demo shop, in a database of its own. It is written in the app's language at the time it is opened, and stays as it
//! is if the language changes while it is open.

use super::{BackupState, Loading, Store, StoreEvent, database_name};
use crate::lazy::{ChunkLoadError, chunk};
use crate::platform::indexed_db::IndexedDb;
use crate::platform::settings::{Language, Settings};
use crate::platform::{clock, drafts, ids, spawn_local, tabs};
use lastpull_core::collections::sort_by_key;
use lastpull_core::demo;
use lastpull_core::facts::Draft;
use lastpull_core::ids::DeviceId;
use lastpull_core::journal::Storage;
use lastpull_core::shop::Shop;
use lastpull_core::time::WallClock;
use leptos::prelude::*;

/// Makes the facts of a demo shop: at what time, recorded by which device, the device's name, and in which language.
type DemoFacts = fn(WallClock, DeviceId, &str, Language) -> Vec<Draft>;

fn demo_facts(clock: WallClock, device: DeviceId, name: &str, language: Language) -> Vec<Draft> {
    let language = match language {
        Language::English => demo::Language::English,
        Language::Spanish => demo::Language::Spanish,
    };
    demo::demo_facts(clock, device, name, language, ids::new_id)
}

chunk! {
    jobs_and_settings: fn split_demo_facts() -> Result<DemoFacts, ChunkLoadError> {
        Ok(demo_facts)
    }
}

impl Store {
    /// Opens the demo shop instead of the shop's own journal.
    pub fn enter_demo(self, device_name: String) {
        // Pressed twice, it is opened once.
        if self.session.with_value(|session| session.switching)
            || self.settings.with_untracked(|settings| settings.demo)
        {
            return;
        }
        self.session.update_value(|session| session.switching = true);
        spawn_local(async move {
            self.open_demo(device_name).await;
            self.session.update_value(|session| session.switching = false);
        });
    }

    async fn open_demo(self, device_name: String) {
        // Unsaved facts belong to the shop's own journal.
        if !self.flush().await {
            return;
        }
        let Ok(facts) = split_demo_facts().await else {
            self.notify_event(StoreEvent::ChunkNotLoaded);
            return;
        };
        let language = self.settings.with_untracked(Settings::language_or_browser);
        self.update_settings(Settings::suspend_shop);
        self.setters().backup.set(BackupState::default());
        let storage = IndexedDb::new(&database_name(true));
        let filled = async {
            storage.erase().await?;
            let device = storage.open().await?.device;
            let mut drafts = facts(clock::now(), device, &device_name, language);
            sort_by_key(&mut drafts, |draft| draft.at);
            storage.append(&drafts).await.map(drop)
        };
        let filled = filled.await;
        // What was recorded meanwhile belongs to it too.
        let saved = self.flush().await;
        match filled {
            Ok(()) if saved => self.open(),
            Ok(()) => self.update_settings(Settings::resume_shop),
            Err(fault) => self.setters().loading.set(Loading::Failed(fault.into())),
        }
    }

    /// Closes the demo shop and deletes it.
    pub fn leave_demo(self, notice: String) {
        if self.session.with_value(|session| session.switching)
            || !self.settings.with_untracked(|settings| settings.demo)
        {
            return;
        }
        drafts::delete_all(drafts::shop_key(true));
        let storage = self.storage.get_value();
        self.update_settings(Settings::resume_shop);
        self.setters().backup.set(BackupState::default());
        // What is being written is of the demo; what is recorded from now on is of the shop's own journal.
        self.leave_shop();
        self.session.update_value(|session| session.writes_stopped = true);
        self.setters().pending.set(Vec::new());
        self.setters().shop.set(Shop::default());
        self.setters().notice.set(None);
        spawn_local(async move {
            self.stop_writing().await;
            // Erased first: if another tab keeps the database open, only an empty one waits for deletion.
            let _ = storage.erase().await;
            tabs::notify_changed();
            self.open();
            self.resume_writing();
            self.notify(notice);
            let _ = storage.delete().await;
        });
    }

    /// Deletes a demo shop that remained when the browser was killed.
    pub(super) fn delete_leftover_demo(self) {
        if !self.settings.with_untracked(|settings| settings.demo) {
            spawn_local(async move {
                let _ = IndexedDb::new(&database_name(true)).delete().await;
            });
        }
    }
}
