//! The one long-lived store of the app: the folded shop, what waits to be saved, and the device's
//! settings. Screens read signals from it and hand it facts; they know nothing else.

mod archive;
mod backup;
mod demo;
mod notice;
mod open;
mod persistence;
mod photos;
mod save_queue;

pub use backup::{BackupState, ImportError, ImportSummary};
pub use notice::Notice;
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

/// Handles of everything that lives as long as the page. Copied freely.
#[derive(Clone, Copy)]
pub struct Store {
    /// The shop as it stands, with all that is saved.
    pub shop: RwSignal<Shop>,
    /// This device in the journal.
    pub device: RwSignal<DeviceId>,
    /// This moment; moves on every second.
    pub clock: RwSignal<WallClock>,
    /// Settings of the device.
    pub settings: RwSignal<Settings>,
    /// How the opening goes.
    pub loading: RwSignal<Loading>,
    /// Facts handed over and not saved yet.
    pub pending: RwSignal<Vec<PendingFact>>,
    /// Whether saving works.
    pub saving: RwSignal<SaveState>,
    /// What to tell the person, with a way back where there is one.
    pub notice: RwSignal<Option<Notice>>,
    /// Whether the browser promises to keep the data, and the room there is.
    pub persistence: RwSignal<Persistence>,
    /// The backup being made or taken in.
    pub backup: RwSignal<BackupState>,
    /// Whether a new version of the app waits.
    pub update_waits: RwSignal<bool>,
    /// Whether the app is stored for use without a network.
    pub offline_ready: RwSignal<bool>,
    /// Moves on when the browser offers to install.
    pub install_offer: RwSignal<u32>,
    storage: StoredValue<IndexedDb, LocalStorage>,
    recent: StoredValue<Vec<Entry>>,
}

/// The database of the shop itself.
const SHOP: &str = "lastpull";
/// The database of the demo shop.
const DEMO: &str = "lastpull-demo";

impl Store {
    /// The store of a page just opened. Reading begins with [`Store::open`].
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
            storage: StoredValue::new_local(IndexedDb::new(name).beside(JournalWorker::of_page())),
            recent: StoredValue::new(Vec::new()),
        }
    }

    /// The store, from anywhere below the root.
    pub fn from_context() -> Self {
        expect_context()
    }

    /// Starts everything that runs beside the screens.
    pub fn start(self) {
        self.open();
        clock::every(Duration::from_secs(1), move || self.clock.set(clock::now()));
        platform::wake_lock::watch();
        platform::install::watch(move || self.install_offer.update(|n| *n += 1));
        // Not while the first screen is being drawn.
        clock::after(Duration::from_millis(1500), move || {
            platform::updates::start(move || self.offline_ready.set(true), move || self.update_waits.set(true));
            crate::lazy::fetch_all();
            self.refresh_persistence();
            self.delete_leftover_demo();
        });
        clock::every(Duration::from_secs(30 * 60), platform::updates::look);
        save_queue::warn_before_leaving(self);
    }

    /// Changes the device's settings and keeps them.
    pub fn update_settings(self, change: impl FnOnce(&mut Settings)) {
        self.settings.update(change);
        self.settings.with_untracked(platform::settings::save);
    }

    /// Who works at this device, where that is known.
    pub fn operator(self) -> Option<String> {
        self.settings.with_untracked(|settings| settings.operator.clone())
    }

    /// Hands over facts about one subject to be saved.
    pub fn record(self, subject: Subject, fact: Fact) {
        self.record_all(vec![(subject, fact)]);
    }

    /// Whether any run is on the press: nothing may interrupt then.
    pub fn is_printing(self) -> bool {
        self.shop.with(|shop| shop.runs().any(|(_, run)| !run.deleted && run.progress.is_on_press()))
    }
}

impl Default for Store {
    fn default() -> Self {
        Self::new()
    }
}
