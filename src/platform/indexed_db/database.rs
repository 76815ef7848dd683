//! The connection to the database.

use super::super::clock;
use super::super::journal_worker::JournalWorker;
use super::super::spawn::spawn_local;
use super::fault::{fault, fault_of};
use super::journal_meta::KnownMeta;
use super::schema::{VERSION, upgrade};
use super::transaction::{Work, strict};
use idb::{DatabaseEvent, Factory};
use js_sys::{Array, Function, Promise};
use lastpull_core::facts::Entry;
use lastpull_core::journal::StorageFault;
use std::cell::{Cell, RefCell};
use std::rc::Rc;
use std::time::Duration;
use wasm_bindgen::JsValue;
use wasm_bindgen_futures::JsFuture;
use web_sys::{IdbDatabase, IdbTransaction};

/// Time after which an open database that does not answer is reported. It may still answer later.
const OPEN_TIMEOUT: Duration = Duration::from_secs(6);

/// A journal in the IndexedDB database of this name. Clones share one connection.
#[derive(Clone)]
pub struct IndexedDb {
    pub(super) name: Rc<str>,
    connection: Rc<RefCell<Option<IdbDatabase>>>,
    /// The worker, which is tried first.
    pub(super) disk: Option<JournalWorker>,
    /// What this page last saw of the journal.
    pub(super) known: Rc<RefCell<Option<KnownMeta>>>,
    /// Entries of an append that was not answered: they may be stored or not.
    pub(super) unsure: Rc<RefCell<Vec<Entry>>>,
    /// The page's own append under way.
    pub(super) appending: Rc<RefCell<Option<Appending>>>,
    opening: Rc<RefCell<Option<Opening>>>,
}

/// An append under way in the page.
pub(super) struct Appending {
    pub(super) transaction: IdbTransaction,
    /// What it may store: what a worker was asked for, until its own numbers are known. It does not commit before.
    pub(super) entries: Vec<Entry>,
}

/// An open request under way, which several uses wait for.
#[derive(Clone)]
struct Opening {
    /// Resolves when the request has ended, whatever its result.
    ended: Promise,
    /// Resolves if another connection keeps the request from ending.
    blocked: Promise,
    is_blocked: Rc<Cell<bool>>,
    /// The result, once it has ended.
    result: Rc<RefCell<Option<Result<IdbDatabase, StorageFault>>>>,
}

/// A promise, and what resolves it.
fn signal() -> (Promise, impl FnOnce() + 'static) {
    let resolver = Rc::new(RefCell::new(None::<Function>));
    let promise = Promise::new(&mut |resolve, _| drop(resolver.replace(Some(resolve))));
    (promise, move || {
        if let Some(resolve) = resolver.take() {
            let _ = resolve.call0(&JsValue::UNDEFINED);
        }
    })
}

impl IndexedDb {
    /// The journal of this name; nothing is opened yet.
    pub fn new(name: &str) -> Self {
        Self {
            name: name.into(),
            connection: Rc::default(),
            disk: None,
            known: Rc::default(),
            unsure: Rc::default(),
            appending: Rc::default(),
            opening: Rc::default(),
        }
    }

    /// Its name.
    pub fn name(&self) -> String {
        self.name.to_string()
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

    /// Waits until an open request that was reported as blocked or silent has ended after all.
    pub async fn until_opened(&self) {
        let opening = self.opening.borrow().clone();
        if let Some(opening) = opening {
            let _ = JsFuture::from(opening.ended).await;
        }
    }

    async fn connect(&self) -> Result<IdbDatabase, StorageFault> {
        if let Some(database) = self.connection.borrow().clone() {
            return Ok(database);
        }
        let opening = self.opening.borrow().clone();
        let opening = match opening {
            Some(opening) => opening,
            None => self.start_opening()?,
        };
        let (silence, on_silence) = signal();
        clock::after(OPEN_TIMEOUT, on_silence);
        let first = Array::of3(&opening.ended, &opening.blocked, &silence);
        let _ = JsFuture::from(Promise::race(&first)).await;
        let result = opening.result.borrow().clone();
        match result {
            Some(result) => result,
            None if opening.is_blocked.get() => Err(StorageFault::Blocked),
            None => Err(StorageFault::Silent),
        }
    }

    fn start_opening(&self) -> Result<Opening, StorageFault> {
        let factory = Factory::new().map_err(|_| StorageFault::Unavailable)?;
        let mut request = factory.open(&self.name, Some(VERSION)).map_err(fault)?;
        request.on_upgrade_needed(|event| {
            // A failure here aborts the upgrade, and with it the open request.
            if let (Ok(database), Ok(from)) = (event.database(), event.old_version()) {
                upgrade(&database, from);
            }
        });
        let (blocked, on_blocked) = signal();
        let (ended, on_ended) = signal();
        let opening = Opening { ended, blocked, is_blocked: Rc::default(), result: Rc::default() };
        let is_blocked = Rc::clone(&opening.is_blocked);
        request.on_blocked(move |_| {
            is_blocked.set(true);
            on_blocked();
        });
        self.opening.replace(Some(opening.clone()));
        let (slot, under_way, result) =
            (Rc::clone(&self.connection), Rc::clone(&self.opening), Rc::clone(&opening.result));
        spawn_local(async move {
            let opened = request.await.map_err(fault).map(|mut database| {
                // Closed by the browser (its data was cleared), or asked to close for an upgrade or
                // a deletion in another tab.
                let closed = Rc::clone(&slot);
                database.on_close(move |_| drop(closed.take()));
                let closed = Rc::clone(&slot);
                database.on_version_change(move |_| {
                    if let Some(database) = closed.take() {
                        database.close();
                    }
                });
                // The wrapper removes its listeners when dropped; the raw handle outlives it.
                database.forget_callbacks();
                let database = IdbDatabase::from(database);
                slot.replace(Some(database.clone()));
                database
            });
            result.replace(Some(opened));
            under_way.take();
            on_ended();
        });
        Ok(opening)
    }

    /// Runs `steps` in one transaction over these stores. If it fails in a way that a new connection may cure, the
    /// next use opens one.
    pub(super) async fn work<T>(
        &self,
        stores: &[&str],
        mode: &str,
        steps: impl AsyncFnOnce(&Work) -> Result<T, StorageFault>,
    ) -> Result<T, StorageFault> {
        let done = self.begin_over(stores, mode).await?.run_steps(steps).await;
        if matches!(done, Err(StorageFault::Closed | StorageFault::Other(_))) {
            self.disconnect();
        }
        done
    }

    /// Starts a transaction on these stores. If the connection turns out to be closed, it is opened again once.
    async fn begin_over(&self, stores: &[&str], mode: &str) -> Result<Work, StorageFault> {
        let database = self.connect().await?;
        match strict(&database, stores, mode) {
            Ok(raw) => Ok(Work::new(raw)),
            Err(_) => {
                self.disconnect();
                let database = self.connect().await?;
                strict(&database, stores, mode).map(Work::new).map_err(|error| fault_of(&error))
            }
        }
    }
}
