//! The journal and the photos in IndexedDB.
//!
//! Schema, database version 2; 1 had no photos. Every value is a byte array that begins with its own version.
//!
//! | object store | key | value |
//! |---|---|---|
//! | `meta` | `"device"` | the 16 bytes of this device's id |
//! | `meta` | `"head"` | [`Head::to_bytes`] |
//! | `tail` | `[device, seq]` | one entry, as `journal::record` |
//! | `segments` | `[device, first seq]` | many entries, as `journal::segment` |
//! | `checkpoint` | `"shop"` | [`Checkpoint`] |
//! | `photos` | id in hexadecimal | [`STORED_VERSION`], then the JPEG |
//! | `cards` | id in hexadecimal | [`StoredPhotoInfo`]: when the photo was last kept, and its thumbnail |
//!
//! `disk.js` reads and appends with the same schema in a worker.
//!
//! Every write asks for strict durability: its future resolves when the bytes are on the disk. Inside a
//! transaction only its own requests are awaited, since it commits by itself otherwise. Photos have
//! transactions of their own, so that a count never waits for one.

use super::ids;
use super::journal_worker::{Append, Appended, JournalWorker, Stored};
use idb::{Database, DatabaseEvent, Error, Factory, ObjectStore, ObjectStoreParams, Transaction};
use js_sys::{Array, Function, Object, Promise, Reflect, Uint8Array};
use lastpull_core::facts::{Draft, Entry, Opened};
use lastpull_core::ids::DeviceId;
use lastpull_core::ids::PhotoId;
use lastpull_core::journal::record::BytesProblem;
use lastpull_core::journal::{Checkpoint, Head, HybridClock, Storage, StorageFault, assign_sequence, record, segment};
use lastpull_core::photo::{JpegPhoto, PhotoStore, STORED_VERSION, StoredPhotoInfo};
use lastpull_core::time::WallTime;
use std::cell::RefCell;
use std::collections::BTreeSet;
use std::rc::Rc;
use uuid::Uuid;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{DomException, IdbDatabase, IdbTransaction};

/// Version of the schema above.
const VERSION: u32 = 2;
const META: &str = "meta";
const TAIL: &str = "tail";
const SEGMENTS: &str = "segments";
const CHECKPOINT: &str = "checkpoint";
const PHOTOS: &str = "photos";
const CARDS: &str = "cards";
/// Object stores of the journal.
const JOURNAL_STORES: &[&str] = &[META, TAIL, SEGMENTS, CHECKPOINT];
/// Object stores of the photos.
const PHOTO_STORES: &[&str] = &[PHOTOS, CARDS];

/// A journal in the IndexedDB database of this name. Clones share one connection.
#[derive(Clone)]
pub struct IndexedDb {
    name: Rc<str>,
    connection: Rc<RefCell<Option<IdbDatabase>>>,
    /// The worker, which is tried first.
    disk: Option<JournalWorker>,
    known: Rc<RefCell<Option<KnownMeta>>>,
}

/// The values of the store `meta` as last read or written by this page.
#[derive(Clone)]
struct KnownMeta {
    device: DeviceId,
    head: Head,
    /// The values as stored.
    meta: Vec<Vec<u8>>,
}

/// Result of an append in the worker.
enum WorkerAppend {
    /// Committed.
    Saved(Vec<Entry>),
    /// The worker was not asked, or stored nothing.
    NotDone,
    /// The worker did not answer: these entries may be committed or not.
    Unsure(Vec<Entry>),
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

    /// What the worker read; `None` if it failed, or if the page must create or upgrade the database first.
    async fn read_in_worker(&self) -> Option<Stored> {
        let stored = self.disk.as_ref()?.read(&self.name).await?;
        (stored.version == VERSION && !stored.meta.is_empty()).then_some(stored)
    }

    /// Appends in the worker, on top of the head last seen by this page.
    async fn append_in_worker(&self, drafts: &[Draft]) -> Result<WorkerAppend, StorageFault> {
        let Some(disk) = &self.disk else { return Ok(WorkerAppend::NotDone) };
        // Another tab may have written in between, more than once.
        for _ in 0..3 {
            let Some(KnownMeta { device, mut head, meta }) = self.known.borrow().clone() else { break };
            let entries = assign_sequence(&mut head, device, drafts);
            let after = head.to_bytes();
            let append = Append {
                name: &self.name,
                version: VERSION,
                meta: &meta,
                head: &after,
                keys: entries.iter().map(|entry| entry_key(device, entry.seq)).collect(),
                records: entries.iter().map(record::encode).collect(),
            };
            match disk.append(append).await {
                Appended::Saved => {
                    let meta = vec![device.as_bytes().to_vec(), after];
                    self.known.replace(Some(KnownMeta { device, head, meta }));
                    return Ok(WorkerAppend::Saved(entries));
                }
                Appended::Changed(meta) => {
                    let known = device_and_head(meta)?;
                    self.known.replace(known);
                }
                Appended::Unknown => return Ok(WorkerAppend::Unsure(entries)),
            }
        }
        Ok(WorkerAppend::NotDone)
    }

    /// Starts a transaction on the journal's stores.
    async fn begin(&self) -> Result<Work, StorageFault> {
        self.begin_over(JOURNAL_STORES, "readwrite").await
    }

    /// Starts a transaction on these stores. If the connection turns out to be closed, it is opened again once.
    async fn begin_over(&self, stores: &[&str], mode: &str) -> Result<Work, StorageFault> {
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

/// Creates the object stores that each version after `from` added. 0 is a new database.
fn upgrade(database: &Database, from: u32) {
    let added: &[&[&str]] = &[JOURNAL_STORES, PHOTO_STORES];
    for store in added.iter().skip(from as usize).copied().flatten() {
        let _ = database.create_object_store(store, ObjectStoreParams::new());
    }
}

/// A transaction with strict durability. Called through reflection, since the binding for its options is
/// unstable.
fn strict(database: &IdbDatabase, stores: &[&str], mode: &str) -> Result<IdbTransaction, JsValue> {
    let stores: Array = stores.iter().copied().map(JsValue::from_str).collect();
    let options = Object::new();
    Reflect::set(&options, &"durability".into(), &"strict".into())?;
    let transaction: Function = Reflect::get(database, &"transaction".into())?.dyn_into()?;
    transaction.call3(database, &stores, &mode.into(), &options)?.dyn_into()
}

/// Commits a transaction. Called through reflection, since its binding is marked for removal.
fn commit(transaction: &IdbTransaction) -> Result<JsValue, JsValue> {
    let commit: Function = Reflect::get(transaction, &"commit".into())?.dyn_into()?;
    commit.call0(transaction)
}

/// A running transaction.
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

    async fn get_key(&self, store: &str, key: &str) -> Result<Option<JsValue>, StorageFault> {
        self.store(store)?.get_key(JsValue::from_str(key)).map_err(fault)?.await.map_err(fault)
    }

    async fn all(&self, store: &str) -> Result<Vec<Vec<u8>>, StorageFault> {
        let values = self.store(store)?.get_all(None, None).map_err(fault)?.await.map_err(fault)?;
        Ok(values.iter().map(|value| Uint8Array::new(value).to_vec()).collect())
    }

    /// The device and the head, read with one request: each response is a task on the page's
    /// thread, and a frame drawn in between delays a count.
    async fn device_and_head(&self) -> Result<KnownMeta, StorageFault> {
        if let Some(known) = device_and_head(self.all(META).await?)? {
            return Ok(known);
        }
        let device = ids::new_id();
        let known = KnownMeta { device, head: Head::default(), meta: vec![device.as_bytes().to_vec()] };
        self.put(META, &"device".into(), device.as_bytes())?;
        Ok(known)
    }

    /// Whether exactly this entry is in the tail.
    async fn holds(&self, entry: &Entry) -> Result<bool, StorageFault> {
        let key = entry_key(entry.device, entry.seq);
        let value = self.store(TAIL)?.get(key).map_err(fault)?.await.map_err(fault)?;
        Ok(value.is_some_and(|value| Uint8Array::new(&value).to_vec() == record::encode(entry)))
    }

    async fn tail(&self) -> Result<Vec<Entry>, StorageFault> {
        self.all(TAIL).await?.iter().map(|bytes| record::decode(bytes).map_err(unreadable)).collect()
    }

    /// Waits until the transaction is committed. Listens to the transaction itself: it ends once, by
    /// completion or abort, and only then its error is known.
    async fn finish(self) -> Result<(), StorageFault> {
        let ended = Promise::new(&mut |complete, abort| {
            self.raw.set_oncomplete(Some(&complete));
            self.raw.set_onabort(Some(&abort));
            // Nothing more is requested, so it can commit at once. Fails if the transaction has begun to
            // commit by itself.
            let _ = commit(&self.raw);
        });
        JsFuture::from(ended).await.map(drop).map_err(|_| {
            self.raw.error().map_or(StorageFault::Closed, |error| fault_named(&error.name(), &error.message()))
        })
    }

    /// Runs `steps` and waits for the commit; if one fails, the whole transaction is rolled back.
    async fn run_steps<T>(self, steps: impl AsyncFnOnce(&Self) -> Result<T, StorageFault>) -> Result<T, StorageFault> {
        match steps(&self).await {
            Ok(value) => self.finish().await.map(|()| value),
            Err(fault) => self.abandon(fault),
        }
    }

    /// Aborts the transaction, and returns the fault that caused it.
    fn abandon<T>(self, fault: StorageFault) -> Result<T, StorageFault> {
        let _ = self.raw.abort();
        Err(fault)
    }
}

/// The device and the head in the values of `meta`; `None` in a new journal.
fn device_and_head(meta: Vec<Vec<u8>>) -> Result<Option<KnownMeta>, StorageFault> {
    // In the order of the keys; the device is written before the first head.
    let Some(bytes) = meta.first() else { return Ok(None) };
    let device = Uuid::from_slice(bytes).map_err(|_| StorageFault::Unreadable(BytesProblem::Damaged))?;
    let head = meta.get(1).map_or(Ok(Head::default()), |bytes| Head::from_bytes(bytes).map_err(unreadable))?;
    Ok(Some(KnownMeta { device, head, meta }))
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
        | Error::GetKeyFailed(value)
        | Error::GetAllKeysFailed(value)
        | Error::DeleteFailed(value)
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

impl Storage<lastpull_core::facts::Fact> for IndexedDb {
    async fn open(&self) -> Result<Opened, StorageFault> {
        if let Some(Stored { meta, checkpoint, tail, .. }) = self.read_in_worker().await
            && let Some(known) = device_and_head(meta)?
        {
            let KnownMeta { device, head, .. } = known.clone();
            self.known.replace(Some(known));
            let tail = tail.iter().map(|bytes| record::decode(bytes).map_err(unreadable)).collect::<Result<_, _>>()?;
            return Ok(Opened { device, head, checkpoint: checkpoint.map(|bytes| Checkpoint { bytes }), tail });
        }
        let steps = async |work: &Work| {
            let known = work.device_and_head().await?;
            let checkpoint = work.get(CHECKPOINT, "shop").await?.map(|bytes| Checkpoint { bytes });
            let tail = work.tail().await?;
            Ok((known, checkpoint, tail))
        };
        let (known, checkpoint, tail) = self.begin().await?.run_steps(steps).await?;
        let KnownMeta { device, head, .. } = known.clone();
        self.known.replace(Some(known));
        Ok(Opened { device, head, checkpoint, tail })
    }

    async fn append(&self, drafts: &[Draft]) -> Result<Vec<Entry>, StorageFault> {
        let unsure = match self.append_in_worker(drafts).await? {
            WorkerAppend::Saved(entries) => return Ok(entries),
            WorkerAppend::NotDone => Vec::new(),
            WorkerAppend::Unsure(entries) => entries,
        };
        let steps = async |work: &Work| {
            let KnownMeta { device, mut head, .. } = work.device_and_head().await?;
            // Entries without an answer may be stored all the same: all or none of them, since it was one transaction.
            if let Some(first) = unsure.first()
                && work.holds(first).await?
            {
                return Ok(unsure);
            }
            let entries = assign_sequence(&mut head, device, drafts);
            for entry in &entries {
                work.put(TAIL, &entry_key(device, entry.seq), &record::encode(entry))?;
            }
            work.put(META, &"head".into(), &head.to_bytes())?;
            Ok(entries)
        };
        self.begin_over(&[META, TAIL], "readwrite").await?.run_steps(steps).await
    }

    async fn compact(
        &self,
        expected: &Head,
        added: &[Entry],
        clock: HybridClock,
        checkpoint: &Checkpoint,
    ) -> Result<Head, StorageFault> {
        let steps = async |work: &Work| {
            let mut head = work.device_and_head().await?.head;
            if head.coverage != expected.coverage {
                return Err(StorageFault::Stale);
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
            Ok(head)
        };
        self.begin().await?.run_steps(steps).await
    }

    async fn read_all(&self) -> Result<Vec<Entry>, StorageFault> {
        let steps = async |work: &Work| Ok((work.tail().await?, work.all(SEGMENTS).await?));
        let (mut entries, segments) = self.begin().await?.run_steps(steps).await?;
        for bytes in segments {
            entries.extend(segment::unpack(&bytes).map_err(unreadable)?);
        }
        Ok(entries)
    }

    async fn erase(&self) -> Result<(), StorageFault> {
        let steps = async |work: &Work| {
            for store in [JOURNAL_STORES, PHOTO_STORES].concat() {
                work.store(store)?.clear().map_err(fault)?;
            }
            Ok(())
        };
        self.begin_over(&[JOURNAL_STORES, PHOTO_STORES].concat(), "readwrite").await?.run_steps(steps).await
    }
}

impl PhotoStore for IndexedDb {
    async fn store_photo(
        &self,
        photo: &JpegPhoto,
        thumbnail: Option<&[u8]>,
        now: WallTime,
    ) -> Result<bool, StorageFault> {
        let key = photo.id().to_string();
        // Assembled before the transaction begins.
        let bytes = [&[STORED_VERSION], photo.bytes()].concat();
        let steps = async |work: &Work| {
            let new = work.get_key(PHOTOS, &key).await?.is_none();
            let before = work.get(CARDS, &key).await?.and_then(|card| StoredPhotoInfo::from_bytes(&card));
            let thumbnail = thumbnail.map(<[u8]>::to_vec).or(before.map(|card| card.thumbnail)).unwrap_or_default();
            if new {
                work.put(PHOTOS, &key.as_str().into(), &bytes)?;
            }
            work.put(CARDS, &key.as_str().into(), &StoredPhotoInfo { stored_at: now, thumbnail }.to_bytes())?;
            Ok(new)
        };
        self.begin_over(PHOTO_STORES, "readwrite").await?.run_steps(steps).await
    }

    async fn store_thumbnail(&self, photo: PhotoId, thumbnail: &[u8]) -> Result<(), StorageFault> {
        let key = photo.to_string();
        let steps = async |work: &Work| {
            if let Some(card) = work.get(CARDS, &key).await?.and_then(|card| StoredPhotoInfo::from_bytes(&card)) {
                let card = StoredPhotoInfo { thumbnail: thumbnail.to_vec(), ..card };
                work.put(CARDS, &key.as_str().into(), &card.to_bytes())?;
            }
            Ok(())
        };
        self.begin_over(PHOTO_STORES, "readwrite").await?.run_steps(steps).await
    }

    async fn photo(&self, photo: PhotoId) -> Result<Option<Vec<u8>>, StorageFault> {
        let key = photo.to_string();
        let steps = async |work: &Work| work.get(PHOTOS, &key).await;
        match self.begin_over(PHOTO_STORES, "readonly").await?.run_steps(steps).await? {
            Some(mut bytes) if bytes.first() == Some(&STORED_VERSION) => Ok(Some(bytes.split_off(1))),
            Some(_) => Err(StorageFault::NewerVersion),
            None => Ok(None),
        }
    }

    async fn thumbnail(&self, photo: PhotoId) -> Result<Option<Vec<u8>>, StorageFault> {
        let key = photo.to_string();
        let steps = async |work: &Work| work.get(CARDS, &key).await;
        let card = self.begin_over(PHOTO_STORES, "readonly").await?.run_steps(steps).await?;
        let small = card.and_then(|card| StoredPhotoInfo::from_bytes(&card)).map(|card| card.thumbnail);
        Ok(small.filter(|small| !small.is_empty()))
    }

    async fn photos(&self) -> Result<BTreeSet<PhotoId>, StorageFault> {
        let steps = async |work: &Work| {
            let keys = work.store(PHOTOS)?.get_all_keys(None, None).map_err(fault)?.await.map_err(fault)?;
            Ok(keys.iter().filter_map(|key| PhotoId::parse(&key.as_string()?)).collect())
        };
        self.begin_over(PHOTO_STORES, "readonly").await?.run_steps(steps).await
    }

    async fn delete_photos(&self, photos: &[PhotoId], before: WallTime) -> Result<u32, StorageFault> {
        let keys: Vec<String> = photos.iter().map(PhotoId::to_string).collect();
        let steps = async |work: &Work| {
            let mut gone = 0;
            for key in &keys {
                let card = work.get(CARDS, key).await?;
                let late = card
                    .and_then(|card| StoredPhotoInfo::from_bytes(&card))
                    .is_some_and(|card| card.stored_at >= before);
                if !late && work.get_key(PHOTOS, key).await?.is_some() {
                    for store in PHOTO_STORES {
                        work.store(store)?.delete(JsValue::from_str(key)).map_err(fault)?;
                    }
                    gone += 1;
                }
            }
            Ok(gone)
        };
        self.begin_over(PHOTO_STORES, "readwrite").await?.run_steps(steps).await
    }
}
