//! Opening the journal: from the checkpoint and the entries after it, or from all entries if that fails.

use super::backup::BackupState;
use super::folded::{LoadError, has_unknown};
use super::load::read;
use super::notice::StoreEvent;
use super::session::Session;
use super::{Store, database_name};
use crate::platform::indexed_db::IndexedDb;
use crate::platform::journal_worker::JournalWorker;
use crate::platform::settings::Settings;
use crate::platform::tabs::TabMessage;
use crate::platform::{clock, drafts, settings, spawn_local, tabs};
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
    /// The browser has removed the shop's facts.
    DataGone,
    /// It cannot be opened. Nothing was written.
    Failed(LoadError),
}

/// Time after which a database that does not answer is reported.
const SILENCE: Duration = Duration::from_secs(8);

/// Time in which a message of another tab arrives.
const MESSAGE_TIME: Duration = Duration::from_millis(400);

/// How often a tab looks whether it missed a message; it also looks whenever it comes to the front.
const MISSED_CHECK: Duration = Duration::from_secs(30);

/// Length of the tail, in entries, from which it is compacted. Reading a tail of this length takes a few
/// milliseconds.
const LONG_TAIL: usize = 400;

impl Store {
    /// Opens the shop's journal, or the demo's.
    pub fn open(self) {
        let name = database_name(self.settings.with_untracked(|settings| settings.demo));
        let storage = IndexedDb::new(&name).with_worker(JournalWorker::of_page());
        self.storage.set_value(storage.clone());
        self.leave_shop();
        let opened = self.opened();
        self.expect_answer();
        tabs::listen(&name, move |message| self.on_tab_message(message));
        spawn_local(async move {
            let read = self.reload().await;
            if opened != self.opened() {
                return;
            }
            match read {
                Ok(from_scratch) => {
                    let noted = self.settings.with_untracked(|settings| settings.has_facts && !settings.demo);
                    let is_gone = noted && self.facts_here() == 0;
                    self.setters().loading.set(if is_gone { Loading::DataGone } else { Loading::Ready });
                    // The journal was read before this tab listened to the others. Not while the first page is drawn.
                    clock::after(Duration::from_secs(1), move || self.check_for_missed());
                    let long = self.recent.with_value(Vec::len) >= LONG_TAIL;
                    let photos = self.shop.with_untracked(|shop| shop.photos != Photos::default());
                    if from_scratch || long || photos {
                        clock::after(Duration::from_millis(2500), move || self.compact(from_scratch || long));
                    }
                }
                Err(error) => {
                    let waits = matches!(error, LoadError::Storage(StorageFault::Blocked | StorageFault::Silent));
                    self.setters().loading.set(Loading::Failed(error));
                    if waits {
                        storage.until_opened().await;
                        if opened == self.opened() {
                            self.open();
                        }
                    }
                }
            }
        });
    }

    /// Ends what belongs to the open shop.
    pub(super) fn leave_shop(self) {
        self.forget_picked();
        self.session.update_value(Session::open_shop);
    }

    /// Shows that the shop is not there yet. A database that does not answer is not waited for without a word; if it
    /// answers later, the shop opens.
    fn expect_answer(self) {
        let opened = self.opened();
        self.setters().loading.set(Loading::Reading);
        clock::after(SILENCE, move || {
            let folding = self.progress.with_untracked(Option::is_some);
            if opened == self.opened() && self.loading.get_untracked() == Loading::Reading && !folding {
                self.setters().loading.set(Loading::Failed(StorageFault::Silent.into()));
            }
        });
    }

    /// Reads the journal again from the storage. Returns whether the checkpoint could not be used.
    pub(super) async fn reload(self) -> Result<bool, LoadError> {
        let storage = self.storage.get_value();
        let mut tries = 0;
        let folded = loop {
            match read(&storage, Some(self)).await {
                Err(LoadError::Storage(StorageFault::Stale)) if tries < 3 => tries += 1,
                other => break other?,
            }
        };
        self.setters().device.set(folded.opened.device);
        self.recent.set_value(folded.opened.tail);
        self.setters().shop.set(folded.shop);
        self.note_facts();
        Ok(folded.from_scratch)
    }

    /// Notes in the settings that the shop has facts: they are stored apart from the database, and tell a shop whose facts
    /// the browser has removed from a new one.
    fn note_facts(self) {
        if self.facts_here() == 0 {
            return;
        }
        if !self.settings.with_untracked(|settings| settings.has_facts || settings.demo) {
            self.update_settings(|settings| settings.has_facts = true);
        }
        if self.loading.get_untracked() == Loading::DataGone {
            self.setters().loading.set(Loading::Ready);
        }
    }

    /// Starts a shop without facts.
    pub fn start_shop(self) {
        self.update_settings(Settings::start_shop);
        self.setters().loading.set(Loading::Ready);
    }

    /// Adds saved entries to the shop on screen; reads everything again if they do not follow the last ones.
    pub(super) fn apply_saved(self, entries: &[Entry]) {
        self.recent.update_value(|recent| recent.extend_from_slice(entries));
        let mut follows = false;
        self.setters().shop.update(|shop| follows = shop.apply_all(entries));
        self.note_facts();
        let shown = self.facts_here();
        if !follows {
            self.spawn_reload();
        } else if self.storage.with_value(IndexedDb::known_facts).is_some_and(|known| known != shown) {
            // Others wrote in between. Their messages may be on the way.
            clock::after(MESSAGE_TIME, move || self.check_for_missed());
        }
    }

    /// Reads the journal again beside the work on screen. Several requests are answered by one reading. If it fails, the
    /// shop stays on screen as it is, and a notice says so: a count is never replaced by an error page.
    pub(super) fn spawn_reload(self) {
        if self.session.with_value(|session| session.reloading) {
            self.session.update_value(|session| session.reload_again = true);
            return;
        }
        self.session.update_value(|session| session.reloading = true);
        spawn_local(async move {
            loop {
                self.session.update_value(|session| session.reload_again = false);
                let read = self.reload().await;
                if self.session.with_value(|session| session.reload_again) {
                    continue;
                }
                if read.is_err() {
                    self.notify_event(StoreEvent::NotReadAgain);
                } else {
                    // What was saved while it was read is not in what was read.
                    clock::after(MESSAGE_TIME, move || self.check_for_missed());
                }
                break;
            }
            self.session.update_value(|session| session.reloading = false);
        });
    }

    /// Compares what is stored with what is on screen, and reads it again if another tab wrote and its message was
    /// missed: one that came before this tab listened, or while it was frozen.
    pub(super) fn check_for_missed(self) {
        if self.loading.get_untracked() != Loading::Ready {
            return;
        }
        let (storage, opened) = (self.storage.get_value(), self.opened());
        spawn_local(async move {
            let Ok(head) = storage.head().await else { return };
            let shown = self.facts_here();
            if opened == self.opened() && head.coverage.len() != shown {
                self.spawn_reload();
            }
        });
    }

    /// Watches for moments at which messages may have been missed.
    pub(super) fn watch_for_missed(self) {
        for event in ["visibilitychange", "focus", "pageshow", "resume"] {
            let handle = window_event_listener_untyped(event, move |_| self.check_for_missed());
            std::mem::forget(handle);
        }
        clock::every(MISSED_CHECK, move || self.check_for_missed());
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
        // What is still being written is of a shop that is about to be erased.
        self.leave_shop();
        self.expect_answer();
        let opened = self.opened();
        spawn_local(async move {
            self.stop_writing().await;
            if opened != self.opened() {
                // The storage did not answer, and the user opened the shop again: nothing is erased.
                return self.resume_writing();
            }
            match storage.erase().await {
                Ok(()) => {
                    settings::forget();
                    drafts::delete_all("");
                    self.setters().settings.set(settings::load());
                    self.setters().backup.set(BackupState::default());
                    self.setters().pending.set(Vec::new());
                    tabs::notify_changed();
                    crate::platform::history::go("#/");
                    self.open();
                }
                Err(fault) => self.setters().loading.set(Loading::Failed(fault.into())),
            }
            self.resume_writing();
        });
    }
}
