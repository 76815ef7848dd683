//! The journal in IndexedDB.
//!
//! Schema, database version 1. Every value is a byte array that begins with its own version.
//!
//! | store | key | value |
//! |---|---|---|
//! | `meta` | `"device"` | the 16 bytes of this device's id |
//! | `meta` | `"head"` | [`Head::to_bytes`] |
//! | `tail` | `[device, seq]` | one entry, as `journal::record` |
//! | `segments` | `[device, first seq]` | many entries, as `journal::segment` |
//! | `checkpoint` | `"shop"` | [`Checkpoint`] |
//!
//! Every write asks for strict durability: its future resolves when the bytes are on the disk, not
//! when they are on their way. Inside a transaction nothing is awaited but its own requests.

use super::ids;
use idb::{DatabaseEvent, Error, Factory, ObjectStore, ObjectStoreParams, Transaction};
use js_sys::{Array, Function, Object, Reflect, Uint8Array};
use lastpull_core::journal::record::BytesProblem;
use lastpull_core::journal::{
    Checkpoint, DeviceId, Draft, Entry, Head, HybridClock, Opened, Storage, StorageFault, allocate, record, segment,
};
use std::cell::RefCell;
use std::rc::Rc;
use uuid::Uuid;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{DomException, IdbDatabase, IdbTransaction};

/// The version of the schema above.
const VERSION: u32 = 1;
const META: &str = "meta";
const TAIL: &str = "tail";
const SEGMENTS: &str = "segments";
const CHECKPOINT: &str = "checkpoint";

/// A journal in the browser's database of this name. Clones share one connection.
#[derive(Clone)]
pub struct IndexedDb {
    name: Rc<str>,
    connection: Rc<RefCell<Option<IdbDatabase>>>,
}

impl IndexedDb {
    /// The journal of this name; nothing is opened yet.
    pub fn new(name: &str) -> Self {
        Self { name: name.into(), connection: Rc::default() }
    }

    /// Another handle with a connection of its own, as another tab has.
    pub fn another_tab(&self) -> Self {
        Self::new(&self.name)
    }

    /// Closes the connection and deletes the database.
    ///
    /// # Errors
    /// [`StorageFault`] when the browser refuses; another tab that does not let go delays it.
    pub async fn delete(&self) -> Result<(), StorageFault> {
        self.disconnect();
        let factory = Factory::new().map_err(|_| StorageFault::Unavailable)?;
        factory.delete(&self.name).map_err(fault)?.await.map_err(fault)
    }

    /// Lets go of the connection, so that the next use opens a new one.
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
            // A failure here aborts the upgrade, and the open with it.
            if let Ok(database) = event.database() {
                for store in [META, TAIL, SEGMENTS, CHECKPOINT] {
                    let _ = database.create_object_store(store, ObjectStoreParams::new());
                }
            }
        });
        let mut database = request.await.map_err(fault)?;
        // Closed underneath us (the browser cleared its data), or asked to let go for an upgrade or
        // a deletion in another tab.
        let slot = Rc::clone(&self.connection);
        database.on_close(move |_| drop(slot.take()));
        let slot = Rc::clone(&self.connection);
        database.on_version_change(move |_| {
            if let Some(database) = slot.take() {
                database.close();
            }
        });
        // The wrapper drops its listeners with itself; the raw handle outlives it.
        database.forget_callbacks();
        let database = IdbDatabase::from(database);
        self.connection.replace(Some(database.clone()));
        Ok(database)
    }

    /// Begins a transaction over all stores. A connection that turns out closed is opened again once.
    async fn begin(&self) -> Result<Work, StorageFault> {
        let database = self.connect().await?;
        match strict(&database) {
            Ok(raw) => Ok(Work::new(raw)),
            Err(_) => {
                self.connection.take();
                let database = self.connect().await?;
                strict(&database).map(Work::new).map_err(|error| fault_of(&error))
            }
        }
    }
}

/// A read-and-write transaction with strict durability. Called through reflection, as the binding
/// for its options is not among the stable ones.
fn strict(database: &IdbDatabase) -> Result<IdbTransaction, JsValue> {
    let stores: Array = [META, TAIL, SEGMENTS, CHECKPOINT].into_iter().map(JsValue::from_str).collect();
    let options = Object::new();
    Reflect::set(&options, &"durability".into(), &"strict".into())?;
    let transaction: Function = Reflect::get(database, &"transaction".into())?.dyn_into()?;
    transaction.call3(database, &stores, &"readwrite".into(), &options)?.dyn_into()
}

/// A transaction under way.
struct Work {
    raw: IdbTransaction,
    transaction: Transaction,
}

impl Work {
    fn new(raw: IdbTransaction) -> Self {
        Self { transaction: Transaction::from(raw.clone()), raw }
    }

    fn store(&self, name: &str) -> Result<ObjectStore, StorageFault> {
        self.transaction.object_store(name).map_err(fault)
    }

    fn put(&self, store: &str, key: &JsValue, bytes: &[u8]) -> Result<(), StorageFault> {
        self.store(store)?.put(&Uint8Array::from(bytes), Some(key)).map(drop).map_err(fault)
    }

    async fn get(&self, store: &str, key: &str) -> Result<Option<Vec<u8>>, StorageFault> {
        let value = self.store(store)?.get(JsValue::from_str(key)).map_err(fault)?.await.map_err(fault)?;
        Ok(value.map(|value| Uint8Array::new(&value).to_vec()))
    }

    async fn all(&self, store: &str) -> Result<Vec<Vec<u8>>, StorageFault> {
        let values = self.store(store)?.get_all(None, None).map_err(fault)?.await.map_err(fault)?;
        Ok(values.iter().map(|value| Uint8Array::new(value).to_vec()).collect())
    }

    /// The device and the head, both asked for at once: a count waits for one trip to the disk less.
    async fn device_and_head(&self) -> Result<(DeviceId, Head), StorageFault> {
        let meta = self.store(META)?;
        let device = meta.get(JsValue::from_str("device")).map_err(fault)?;
        let head = meta.get(JsValue::from_str("head")).map_err(fault)?;
        let (device, head) = (device.into_future(), head.into_future());
        let bytes = |value: Option<JsValue>| value.map(|value| Uint8Array::new(&value).to_vec());
        let device = bytes(device.await.map_err(fault)?);
        let head = bytes(head.await.map_err(fault)?);
        let head = head.map_or(Ok(Head::default()), |bytes| Head::from_bytes(&bytes).map_err(unreadable))?;
        if let Some(bytes) = device {
            let device = Uuid::from_slice(&bytes).map_err(|_| StorageFault::Unreadable(BytesProblem::Damaged))?;
            return Ok((device, head));
        }
        let device = ids::new_id();
        self.put(META, &"device".into(), device.as_bytes())?;
        Ok((device, head))
    }

    async fn tail(&self) -> Result<Vec<Entry>, StorageFault> {
        self.all(TAIL).await?.iter().map(|bytes| record::decode(bytes).map_err(unreadable)).collect()
    }

    /// Waits until everything is on the disk.
    async fn finish(self) -> Result<(), StorageFault> {
        let result = self.transaction.await;
        match result {
            Ok(result) if result.is_committed() => Ok(()),
            _ => {
                Err(self.raw.error().map_or(StorageFault::Closed, |error| fault_named(&error.name(), &error.message())))
            }
        }
    }

    /// Takes everything back, and says why it came to that.
    fn abandon<T>(self, fault: StorageFault) -> Result<T, StorageFault> {
        let _ = self.raw.abort();
        Err(fault)
    }
}

fn entry_key(device: DeviceId, seq: u64) -> JsValue {
    Array::of2(&device.to_string().into(), &JsValue::from_f64(seq as f64)).into()
}

fn unreadable(problem: BytesProblem) -> StorageFault {
    match problem {
        BytesProblem::Newer(_) => StorageFault::NewerVersion,
        BytesProblem::Damaged => StorageFault::Unreadable(problem),
    }
}

fn fault(error: Error) -> StorageFault {
    match &error {
        Error::DomException(exception) => fault_named(&exception.name(), &exception.message()),
        Error::UpdateFailed(value)
        | Error::GetFailed(value)
        | Error::GetAllFailed(value)
        | Error::ClearFailed(value) => fault_of(value),
        Error::IndexedDbOpenFailed(value) | Error::ObjectStoreNotFound(value) => fault_of(value),
        _ => StorageFault::Other(error.to_string()),
    }
}

fn fault_of(value: &JsValue) -> StorageFault {
    match value.dyn_ref::<DomException>() {
        Some(exception) => fault_named(&exception.name(), &exception.message()),
        None => StorageFault::Other(format!("{value:?}")),
    }
}

fn fault_named(name: &str, message: &str) -> StorageFault {
    match name {
        "QuotaExceededError" => StorageFault::Full,
        "InvalidStateError" | "AbortError" | "TransactionInactiveError" => StorageFault::Closed,
        "VersionError" => StorageFault::NewerVersion,
        "SecurityError" | "NotAllowedError" => StorageFault::Unavailable,
        _ => StorageFault::Other(format!("{name}: {message}")),
    }
}

impl Storage for IndexedDb {
    async fn open(&self) -> Result<Opened, StorageFault> {
        let work = self.begin().await?;
        let (device, head) = work.device_and_head().await?;
        let checkpoint = work.get(CHECKPOINT, "shop").await?.map(|bytes| Checkpoint { bytes });
        let tail = work.tail().await?;
        work.finish().await?;
        Ok(Opened { device, head, checkpoint, tail })
    }

    async fn append(&self, drafts: &[Draft]) -> Result<Vec<Entry>, StorageFault> {
        let work = self.begin().await?;
        let (device, mut head) = work.device_and_head().await?;
        let entries = allocate(&mut head, device, drafts);
        for entry in &entries {
            work.put(TAIL, &entry_key(device, entry.seq), &record::encode(entry))?;
        }
        work.put(META, &"head".into(), &head.to_bytes())?;
        work.finish().await?;
        Ok(entries)
    }

    async fn consolidate(
        &self,
        expected: &Head,
        added: &[Entry],
        clock: HybridClock,
        checkpoint: &Checkpoint,
    ) -> Result<Head, StorageFault> {
        let work = self.begin().await?;
        let (_, mut head) = work.device_and_head().await?;
        if head.coverage != expected.coverage {
            return work.abandon(StorageFault::Stale);
        }
        let tail = work.tail().await?;
        for segment in segment::pack(tail.iter().chain(added)) {
            work.put(SEGMENTS, &entry_key(segment.device, segment.first), &segment.bytes)?;
        }
        work.store(TAIL)?.clear().map_err(fault)?;
        work.put(CHECKPOINT, &"shop".into(), &checkpoint.bytes)?;
        head.coverage.add_all(added);
        head.clock = clock;
        work.put(META, &"head".into(), &head.to_bytes())?;
        work.finish().await?;
        Ok(head)
    }

    async fn everything(&self) -> Result<Vec<Entry>, StorageFault> {
        let work = self.begin().await?;
        let mut entries = work.tail().await?;
        let segments = work.all(SEGMENTS).await?;
        work.finish().await?;
        for bytes in segments {
            entries.extend(segment::unpack(&bytes).map_err(unreadable)?);
        }
        Ok(entries)
    }

    async fn erase(&self) -> Result<(), StorageFault> {
        let work = self.begin().await?;
        for store in [META, TAIL, SEGMENTS, CHECKPOINT] {
            work.store(store)?.clear().map_err(fault)?;
        }
        work.finish().await
    }
}
