//! The device and the head of the journal, and the entries of its tail.

use super::super::ids;
use super::fault::{fault, unreadable};
use super::schema::{META, SEGMENTS, TAIL, entry_key};
use super::transaction::Work;
use js_sys::Uint8Array;
use lastpull_core::facts::Entry;
use lastpull_core::ids::DeviceId;
use lastpull_core::journal::record::BytesProblem;
use lastpull_core::journal::{Head, StorageFault, record, segment};
use uuid::Uuid;

/// The values of the store `meta` as last read or written by this page.
#[derive(Clone)]
pub struct KnownMeta {
    /// This device.
    pub device: DeviceId,
    /// The head of the journal.
    pub head: Head,
    /// The values as stored.
    pub meta: Vec<Vec<u8>>,
}

/// The device and the head in the values of `meta`; `None` in a new journal.
pub fn device_and_head(meta: Vec<Vec<u8>>) -> Result<Option<KnownMeta>, StorageFault> {
    // In the order of the keys; the device is written before the first head.
    let Some(bytes) = meta.first() else { return Ok(None) };
    let device = Uuid::from_slice(bytes).map_err(|_| StorageFault::Unreadable(BytesProblem::Damaged))?;
    let head = meta.get(1).map_or(Ok(Head::default()), |bytes| Head::from_bytes(bytes).map_err(unreadable))?;
    Ok(Some(KnownMeta { device, head, meta }))
}

impl Work {
    /// The device and the head, read with one request: each response is a task on the page's
    /// thread, and a frame drawn in between delays a count.
    pub async fn device_and_head(&self) -> Result<KnownMeta, StorageFault> {
        if let Some(known) = device_and_head(self.all(META).await?)? {
            return Ok(known);
        }
        let device = ids::new_id();
        let known = KnownMeta { device, head: Head::default(), meta: vec![device.as_bytes().to_vec()] };
        self.put(META, &"device".into(), device.as_bytes())?;
        Ok(known)
    }

    /// The stored head, for steps that build on the head `expected`.
    ///
    /// # Errors
    /// [`StorageFault::Stale`] if another tab has written since.
    pub async fn head_at(&self, expected: &Head) -> Result<Head, StorageFault> {
        let head = self.device_and_head().await?.head;
        if head.coverage == expected.coverage { Ok(head) } else { Err(StorageFault::Stale) }
    }

    /// Whether exactly this entry is stored: in the tail, or in a segment if another tab has compacted since.
    pub async fn holds(&self, entry: &Entry) -> Result<bool, StorageFault> {
        let key = entry_key(entry.device, entry.seq);
        if let Some(value) = self.store(TAIL)?.get(key).map_err(fault)?.await.map_err(fault)? {
            return Ok(Uint8Array::new(&value).to_vec() == record::encode(entry));
        }
        for bytes in self.all(SEGMENTS).await? {
            let packed: Vec<Entry> = segment::unpack(&bytes).map_err(unreadable)?;
            if packed.contains(entry) {
                return Ok(true);
            }
        }
        Ok(false)
    }

    /// The entries of the tail.
    pub async fn tail(&self) -> Result<Vec<Entry>, StorageFault> {
        self.all(TAIL).await?.iter().map(|bytes| record::decode(bytes).map_err(unreadable)).collect()
    }
}
