//! The store of the app: the folded shop, the facts waiting to be saved, and the device's
//! settings. Pages read its signals and hand facts to it.
//!
//! # Decisions
//!
//! - A fact is saved before it is drawn: a commit takes a few milliseconds, after which the count is drawn as saved. If
//!   it takes longer than 24 ms, the count is drawn as unsaved. The pace is computed from saved facts only.
//! - Facts that could not be saved are exported in the backup under a device id of their own, and stay pending until the
//!   user says that the file is there: a download may fail without a word. If they are saved here after all, then as the
//!   entries in the file, so that they do not count twice when the file is imported.
//! - A change of language or units saves everything and reloads the page.

mod archive;
mod backup;
mod demo;
mod folded;
mod import;
mod load;
mod long_work;
mod notice;
mod open;
mod persistence;
mod photos;
mod save_queue;
mod session;

pub use archive::fetch_archive;
pub use backup::{BackupFailure, BackupFile, BackupState};
pub use folded::LoadError;
pub use import::{ImportError, ImportSummary};
pub use long_work::{Progress, Step, work};
pub use notice::{Message, Notice, StoreEvent};
pub use open::Loading;
pub use persistence::Persistence;
pub use photos::{PhotoError, PhotoProgress, PhotoSource};
pub use save_queue::{PendingFact, SaveState, after_write};
pub use session::Session;

use crate::platform;
use crate::platform::clock;
use crate::platform::indexed_db::IndexedDb;
use crate::platform::journal_worker::JournalWorker;
use crate::platform::settings::Settings;
use lastpull_core::facts::{Entry, Fact};
use lastpull_core::ids::{DeviceId, Subject};
use lastpull_core::shop::Shop;
use lastpull_core::time::{Millis, WallClock};
use leptos::prelude::*;
use std::time::Duration;
use uuid::Uuid;

/// Handles of all state that lives as long as the page. `Copy`.
#[derive(Clone, Copy)]
pub struct Store {
    /// The shop with all saved facts.
    pub shop: ReadSignal<Shop>,
    /// This device's id in the journal.
    pub device: ReadSignal<DeviceId>,
    /// The current time; updated every second.
    pub clock: ReadSignal<WallClock>,
    /// Settings of the device.
    pub settings: ReadSignal<Settings>,
    /// State of opening the journal.
    pub loading: ReadSignal<Loading>,
    /// Facts that are not saved yet.
    pub pending: ReadSignal<Vec<PendingFact>>,
    /// Whether saving works.
    pub saving: ReadSignal<SaveState>,
    /// The notice to show, with undo if possible.
    pub notice: ReadSignal<Option<Notice>>,
    /// Whether the browser keeps the data permanently, and the storage space.
    pub persistence: ReadSignal<Persistence>,
    /// State of exporting and importing the backup.
    pub backup: ReadSignal<BackupState>,
    /// How far a worker is that works on the whole journal; `None` if none does.
    pub progress: ReadSignal<Option<Progress>>,
    /// Whether a new version of the app is ready.
    pub update_waits: ReadSignal<bool>,
    /// Whether the app is stored for offline use.
    pub offline_ready: ReadSignal<bool>,
    /// Increases when the browser offers to install the app.
    pub install_offer: ReadSignal<u32>,
    setters: StoredValue<Setters>,
    storage: StoredValue<IndexedDb, LocalStorage>,
    recent: StoredValue<Vec<Entry>>,
    session: StoredValue<Session, LocalStorage>,
}

/// The other ends of the signals: only the store writes them. Kept in one place, so that a copy of the store stays small.
#[derive(Clone, Copy)]
struct Setters {
    shop: WriteSignal<Shop>,
    device: WriteSignal<DeviceId>,
    clock: WriteSignal<WallClock>,
    settings: WriteSignal<Settings>,
    loading: WriteSignal<Loading>,
    pending: WriteSignal<Vec<PendingFact>>,
    saving: WriteSignal<SaveState>,
    notice: WriteSignal<Option<Notice>>,
    persistence: WriteSignal<Persistence>,
    backup: WriteSignal<BackupState>,
    progress: WriteSignal<Option<Progress>>,
    update_waits: WriteSignal<bool>,
    offline_ready: WriteSignal<bool>,
    install_offer: WriteSignal<u32>,
}

/// The name of the shop's own database, or of the demo's.
fn database_name(demo: bool) -> String {
    platform::scope::scoped(if demo { "lastpull-demo" } else { "lastpull" })
}

impl Store {
    /// The store of a new page. Reading begins with [`Store::open`].
    pub fn new() -> Self {
        let settings = platform::settings::load();
        let name = database_name(settings.demo);
        let (shop, set_shop) = signal(Shop::default());
        let (device, set_device) = signal(Uuid::nil());
        let (clock, set_clock) = signal(clock::now());
        let (settings, set_settings) = signal(settings);
        let (loading, set_loading) = signal(Loading::Reading);
        let (pending, set_pending) = signal(Vec::new());
        let (saving, set_saving) = signal(SaveState::Fine);
        let (notice, set_notice) = signal(None);
        let (persistence, set_persistence) = signal(Persistence::default());
        let (backup, set_backup) = signal(BackupState::default());
        let (progress, set_progress) = signal(None);
        let (update_waits, set_update_waits) = signal(false);
        let (offline_ready, set_offline_ready) = signal(false);
        let (install_offer, set_install_offer) = signal(0);
        Self {
            shop,
            device,
            clock,
            settings,
            loading,
            pending,
            saving,
            notice,
            persistence,
            backup,
            progress,
            update_waits,
            offline_ready,
            install_offer,
            setters: StoredValue::new(Setters {
                shop: set_shop,
                device: set_device,
                clock: set_clock,
                settings: set_settings,
                loading: set_loading,
                pending: set_pending,
                saving: set_saving,
                notice: set_notice,
                persistence: set_persistence,
                backup: set_backup,
                progress: set_progress,
                update_waits: set_update_waits,
                offline_ready: set_offline_ready,
                install_offer: set_install_offer,
            }),
            storage: StoredValue::new_local(IndexedDb::new(&name).with_worker(JournalWorker::of_page())),
            recent: StoredValue::new(Vec::new()),
            session: StoredValue::new_local(Session::default()),
        }
    }

    /// Number of times that a shop was opened on this page: what began before the last time belongs to another shop.
    fn opened(self) -> u32 {
        self.session.with_value(|session| session.opened)
    }

    fn setters(self) -> Setters {
        self.setters.get_value()
    }

    /// The store, from the Leptos context.
    pub fn from_context() -> Self {
        expect_context()
    }

    /// Starts everything that runs beside the pages.
    pub fn start(self) {
        self.open();
        clock::every(Duration::from_secs(1), move || self.setters().clock.set(clock::now()));
        platform::wake_lock::watch();
        platform::install::watch(move || self.setters().install_offer.update(|n| *n += 1));
        // Not while the first page is being drawn.
        clock::after(Duration::from_millis(1500), move || {
            platform::updates::start(
                move |stored| self.setters().offline_ready.set(stored),
                move || self.setters().update_waits.set(true),
            );
            crate::lazy::fetch_all();
            self.refresh_persistence();
            self.delete_leftover_demo();
        });
        clock::every(Duration::from_secs(30 * 60), platform::updates::check_for_update);
        // An update must not come in the middle of a run, not even if the app is closed and opened.
        clock::every(Duration::from_secs(2), move || {
            if self.loading.get_untracked() == Loading::Ready {
                platform::updates::hold(untrack(|| self.is_printing()));
            }
        });
        self.warn_before_leaving();
        self.watch_for_missed();
        platform::settings::on_change_elsewhere(move || self.take_over_settings());
    }

    /// Changes the device's settings and saves them. The change is made to what is stored: another tab may have changed
    /// other settings since this one read them.
    pub fn update_settings(self, change: impl FnOnce(&mut Settings)) {
        let mut settings = platform::settings::load_stored().unwrap_or_else(|| self.settings.get_untracked());
        change(&mut settings);
        platform::settings::save(&settings);
        self.setters().settings.set(settings);
    }

    /// Takes over the settings that another tab changed. If it opened another shop, this tab follows once everything is
    /// saved.
    fn take_over_settings(self) {
        let settings = platform::settings::load();
        let other_shop = self.settings.with_untracked(|before| before.demo != settings.demo);
        if !other_shop {
            self.setters().settings.set(settings);
            return;
        }
        platform::spawn_local(async move {
            if self.flush().await {
                self.setters().settings.set(settings);
                self.setters().backup.set(BackupState::default());
                self.open();
            }
        });
    }

    /// The crew member who uses this device, if chosen.
    pub fn operator(self) -> Option<String> {
        self.settings.with_untracked(|settings| settings.operator.clone())
    }

    /// Records a fact about a subject.
    pub fn record(self, subject: Subject, fact: Fact) {
        self.record_all(vec![(subject, fact)]);
    }

    /// Shows the browser's install dialog.
    pub fn ask_to_install(self) {
        platform::install::ask();
        self.setters().install_offer.update(|n| *n += 1);
    }

    /// A view-state that follows the shop, and the clock once a minute.
    pub fn every_minute<T>(self, view: impl Fn(&Shop, WallClock) -> T + Send + Sync + 'static) -> Memo<T>
    where
        T: PartialEq + Send + Sync + 'static,
    {
        let minute = Memo::new(move |_| self.clock.get().now.floor(Millis::from_minutes(1)));
        Memo::new(move |_| {
            // `get`, not `track`: a memo that is never read is never computed, and then follows nothing.
            minute.get();
            self.shop.with(|shop| view(shop, self.clock.get_untracked()))
        })
    }

    /// Number of facts of the open shop.
    fn facts_here(self) -> u64 {
        self.shop.with_untracked(Shop::fact_count)
    }

    /// Whether a run is on the press: it must not be interrupted.
    pub fn is_printing(self) -> bool {
        self.shop.with(Shop::is_printing)
    }
}

impl Default for Store {
    fn default() -> Self {
        Self::new()
    }
}
