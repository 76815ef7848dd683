//! The store of the app: the folded shop, the facts waiting to be saved, and the device's
//! settings. Pages read its signals and hand facts to it.
//!
//! # Decisions
//!
//! - A fact is saved before it is drawn: a commit takes a few milliseconds, after which the count is drawn as saved. If
//!   it takes longer than 24 ms, the count is drawn as unsaved. The pace is computed from saved facts only.
//! - Facts that could not be saved are exported in the backup under a device id of their own, and are no longer pending
//!   once the file is exported: if saved here too, they would count twice when the file is imported.
//! - A change of language or units saves everything and reloads the page.

mod archive;
mod backup;
mod demo;
mod load;
mod notice;
mod open;
mod persistence;
mod photos;
mod save_queue;

pub use backup::{BackupState, ImportError, ImportSummary};
pub use load::LoadError;
pub use notice::{Message, Notice, StoreEvent};
pub use open::Loading;
pub use persistence::Persistence;
pub use photos::{PhotoError, PhotoProgress, PhotoSource};
pub use save_queue::{PendingFact, SaveState, after_write};

use crate::platform;
use crate::platform::clock;
use crate::platform::indexed_db::IndexedDb;
use crate::platform::journal_worker::JournalWorker;
use crate::platform::settings::Settings;
use lastpull_core::facts::{Entry, Fact};
use lastpull_core::ids::{DeviceId, Subject};
use lastpull_core::shop::Shop;
use lastpull_core::time::WallClock;
use leptos::prelude::*;
use std::time::Duration;
use uuid::Uuid;

/// Handles of all state that lives as long as the page. `Copy`.
#[derive(Clone, Copy)]
pub struct Store {
    /// The shop with all saved facts.
    pub shop: RwSignal<Shop>,
    /// This device's id in the journal.
    pub device: RwSignal<DeviceId>,
    /// The current time; updated every second.
    pub clock: RwSignal<WallClock>,
    /// Settings of the device.
    pub settings: RwSignal<Settings>,
    /// State of opening the journal.
    pub loading: RwSignal<Loading>,
    /// Facts that are not saved yet.
    pub pending: RwSignal<Vec<PendingFact>>,
    /// Whether saving works.
    pub saving: RwSignal<SaveState>,
    /// The notice to show, with undo if possible.
    pub notice: RwSignal<Option<Notice>>,
    /// Whether the browser keeps the data permanently, and the storage space.
    pub persistence: RwSignal<Persistence>,
    /// State of exporting and importing the backup.
    pub backup: RwSignal<BackupState>,
    /// Whether a new version of the app is ready.
    pub update_waits: RwSignal<bool>,
    /// Whether the app is stored for offline use.
    pub offline_ready: RwSignal<bool>,
    /// Increases when the browser offers to install the app.
    pub install_offer: RwSignal<u32>,
    storage: StoredValue<IndexedDb, LocalStorage>,
    recent: StoredValue<Vec<Entry>>,
}

/// The database of the shop itself.
const SHOP: &str = "lastpull";
/// The database of the demo shop.
const DEMO: &str = "lastpull-demo";

impl Store {
    /// The store of a new page. Reading begins with [`Store::open`].
    pub fn new() -> Self {
        let settings = platform::settings::load();
        let name = if settings.demo { DEMO } else { SHOP };
        Self {
            shop: RwSignal::new(Shop::default()),
            device: RwSignal::new(Uuid::nil()),
            clock: RwSignal::new(clock::now()),
            settings: RwSignal::new(settings),
            loading: RwSignal::new(Loading::Reading),
            pending: RwSignal::new(Vec::new()),
            saving: RwSignal::new(SaveState::Fine),
            notice: RwSignal::new(None),
            persistence: RwSignal::new(Persistence::default()),
            backup: RwSignal::new(BackupState::default()),
            update_waits: RwSignal::new(false),
            offline_ready: RwSignal::new(false),
            install_offer: RwSignal::new(0),
            storage: StoredValue::new_local(IndexedDb::new(name).with_worker(JournalWorker::of_page())),
            recent: StoredValue::new(Vec::new()),
        }
    }

    /// The store, from the Leptos context.
    pub fn from_context() -> Self {
        expect_context()
    }

    /// Starts everything that runs beside the pages.
    pub fn start(self) {
        self.open();
        clock::every(Duration::from_secs(1), move || self.clock.set(clock::now()));
        platform::wake_lock::watch();
        platform::install::watch(move || self.install_offer.update(|n| *n += 1));
        // Not while the first page is being drawn.
        clock::after(Duration::from_millis(1500), move || {
            platform::updates::start(move || self.offline_ready.set(true), move || self.update_waits.set(true));
            crate::lazy::fetch_all();
            self.refresh_persistence();
            self.delete_leftover_demo();
        });
        clock::every(Duration::from_secs(30 * 60), platform::updates::check_for_update);
        self.warn_before_leaving();
    }

    /// Changes the device's settings and saves them.
    pub fn update_settings(self, change: impl FnOnce(&mut Settings)) {
        self.settings.update(change);
        self.settings.with_untracked(platform::settings::save);
    }

    /// The crew member who uses this device, if chosen.
    pub fn operator(self) -> Option<String> {
        self.settings.with_untracked(|settings| settings.operator.clone())
    }

    /// Records a fact about a subject.
    pub fn record(self, subject: Subject, fact: Fact) {
        self.record_all(vec![(subject, fact)]);
    }

    /// Whether a run is on the press: it must not be interrupted.
    pub fn is_printing(self) -> bool {
        self.shop.with(|shop| shop.runs().any(|(_, run)| !run.deleted && run.progress.is_on_press()))
    }
}

impl Default for Store {
    fn default() -> Self {
        Self::new()
    }
}
