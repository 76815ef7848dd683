//! The connection to the database.

use super::super::journal_worker::JournalWorker;
use super::fault::{fault, fault_of};
use super::journal_meta::KnownMeta;
use super::schema::{JOURNAL_STORES, VERSION, upgrade};
use super::transaction::{Work, strict};
use idb::{DatabaseEvent, Factory};
use lastpull_core::journal::StorageFault;
use std::cell::RefCell;
use std::rc::Rc;
use web_sys::IdbDatabase;

/// A journal in the IndexedDB database of this name. Clones share one connection.
#[derive(Clone)]
pub struct IndexedDb {
    pub(super) name: Rc<str>,
    connection: Rc<RefCell<Option<IdbDatabase>>>,
    /// The worker, which is tried first.
    pub(super) disk: Option<JournalWorker>,
    /// What this page last saw of the journal.
    pub(super) known: Rc<RefCell<Option<KnownMeta>>>,
}

impl IndexedDb {
    /// The journal of this name; nothing is opened yet.
    pub fn new(name: &str) -> Self {
        Self { name: name.into(), connection: Rc::default(), disk: None, known: Rc::default() }
    }

    /// The same, with a worker that is tried first.
    pub fn with_worker(self, disk: Option<JournalWorker>) -> Self {
        Self { disk, ..self }
    }

    /// Another handle with its own connection, as in another tab.
    pub fn another_tab(&self) -> Self {
        Self::new(&self.name).with_worker(self.disk.clone())
    }

    /// Closes the connection and deletes the database.
    ///
    /// # Errors
    /// [`StorageFault`] if the browser refuses; another tab that keeps its connection open delays the deletion.
    pub async fn delete(&self) -> Result<(), StorageFault> {
        self.disconnect();
        let factory = Factory::new().map_err(|_| StorageFault::Unavailable)?;
        factory.delete(&self.name).map_err(fault)?.await.map_err(fault)
    }

    /// Closes the connection, so that the next use opens a new one.
    fn disconnect(&self) {
        if let Some(database) = self.connection.take() {
            database.close();
        }
    }

    async fn connect(&self) -> Result<IdbDatabase, StorageFault> {
        if let Some(database) = self.connection.borrow().clone() {
            return Ok(database);
        }
        let factory = Factory::new().map_err(|_| StorageFault::Unavailable)?;
        let mut request = factory.open(&self.name, Some(VERSION)).map_err(fault)?;
        request.on_upgrade_needed(|event| {
            // A failure here aborts the upgrade, and with it the open request.
            if let (Ok(database), Ok(from)) = (event.database(), event.old_version()) {
                upgrade(&database, from);
            }
        });
        let mut database = request.await.map_err(fault)?;
        // Closed by the browser (its data was cleared), or asked to close for an upgrade or
        // a deletion in another tab.
        let slot = Rc::clone(&self.connection);
        database.on_close(move |_| drop(slot.take()));
        let slot = Rc::clone(&self.connection);
        database.on_version_change(move |_| {
            if let Some(database) = slot.take() {
                database.close();
            }
        });
        // The wrapper removes its listeners when dropped; the raw handle outlives it.
        database.forget_callbacks();
        let database = IdbDatabase::from(database);
        self.connection.replace(Some(database.clone()));
        Ok(database)
    }

    /// Starts a transaction on the journal's stores.
    pub(super) async fn begin(&self) -> Result<Work, StorageFault> {
        self.begin_over(JOURNAL_STORES, "readwrite").await
    }

    /// Starts a transaction on these stores. If the connection turns out to be closed, it is opened again once.
    pub(super) async fn begin_over(&self, stores: &[&str], mode: &str) -> Result<Work, StorageFault> {
        let database = self.connect().await?;
        match strict(&database, stores, mode) {
            Ok(raw) => Ok(Work::new(raw)),
            Err(_) => {
                self.connection.take();
                let database = self.connect().await?;
                strict(&database, stores, mode).map(Work::new).map_err(|error| fault_of(&error))
            }
        }
    }
}
