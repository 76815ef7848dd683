//! The journal in memory: for tests, for the demo's making, and as the plainest reading of the
//! storage promise. Clones share one store, as two tabs share one database.

use super::segment::Segment;
use super::{Checkpoint, Draft, Entry, Head, HybridClock, Opened, Storage, StorageFault, allocate, segment};
use crate::ids::{DeviceId, PhotoId};
use crate::photo::{Card, JpegPhoto, PhotoStore};
use std::cell::RefCell;
use std::collections::{BTreeMap, BTreeSet};
use std::rc::Rc;

/// A journal kept in memory. It keeps the bytes a disk would keep, not the values.
#[derive(Clone)]
pub struct MemoryStorage {
    store: Rc<RefCell<Store>>,
    new_device: Rc<dyn Fn() -> DeviceId>,
}

#[derive(Default)]
struct Store {
    device: Option<DeviceId>,
    head: Head,
    tail: Vec<Vec<u8>>,
    segments: Vec<Segment>,
    checkpoint: Option<Checkpoint>,
    photos: BTreeMap<PhotoId, (Vec<u8>, Card)>,
    next_fault: Option<StorageFault>,
}

impl MemoryStorage {
    /// An empty store, which names its device with `new_device`.
    pub fn new(new_device: impl Fn() -> DeviceId + 'static) -> Self {
        Self { store: Rc::default(), new_device: Rc::new(new_device) }
    }

    /// Makes the next transaction fail, as a full or lost disk would.
    pub fn fail_next(&self, fault: StorageFault) {
        self.store.borrow_mut().next_fault = Some(fault);
    }

    fn device(&self, store: &mut Store) -> DeviceId {
        *store.device.get_or_insert_with(|| (self.new_device)())
    }
}

impl Store {
    fn fault(&mut self) -> Result<(), StorageFault> {
        self.next_fault.take().map_or(Ok(()), Err)
    }

    fn tail(&self) -> Result<Vec<Entry>, StorageFault> {
        let decode = |bytes: &Vec<u8>| super::record::decode(bytes).map_err(StorageFault::Unreadable);
        self.tail.iter().map(decode).collect()
    }
}

impl Storage for MemoryStorage {
    async fn open(&self) -> Result<Opened, StorageFault> {
        let mut store = self.store.borrow_mut();
        store.fault()?;
        let device = self.device(&mut store);
        let (head, checkpoint) = (store.head.clone(), store.checkpoint.clone());
        Ok(Opened { device, head, checkpoint, tail: store.tail()? })
    }

    async fn append(&self, drafts: &[Draft]) -> Result<Vec<Entry>, StorageFault> {
        let mut store = self.store.borrow_mut();
        store.fault()?;
        let device = self.device(&mut store);
        let entries = allocate(&mut store.head, device, drafts);
        store.tail.extend(entries.iter().map(super::record::encode));
        Ok(entries)
    }

    async fn consolidate(
        &self,
        expected: &Head,
        added: &[Entry],
        clock: HybridClock,
        checkpoint: &Checkpoint,
    ) -> Result<Head, StorageFault> {
        let mut store = self.store.borrow_mut();
        store.fault()?;
        if store.head.coverage != expected.coverage {
            return Err(StorageFault::Stale);
        }
        let tail = store.tail()?;
        store.segments.extend(segment::pack(tail.iter().chain(added)));
        store.tail.clear();
        store.checkpoint = Some(checkpoint.clone());
        store.head.coverage.add_all(added);
        store.head.clock = clock;
        Ok(store.head.clone())
    }

    async fn everything(&self) -> Result<Vec<Entry>, StorageFault> {
        let mut store = self.store.borrow_mut();
        store.fault()?;
        let mut entries = store.tail()?;
        for segment in &store.segments {
            entries.extend(segment::unpack(&segment.bytes).map_err(StorageFault::Unreadable)?);
        }
        Ok(entries)
    }

    async fn erase(&self) -> Result<(), StorageFault> {
        let mut store = self.store.borrow_mut();
        store.fault()?;
        *store = Store::default();
        Ok(())
    }
}

impl PhotoStore for MemoryStorage {
    async fn keep_photo(&self, photo: &JpegPhoto, small: Option<&[u8]>, now: u64) -> Result<bool, StorageFault> {
        let mut store = self.store.borrow_mut();
        store.fault()?;
        let new = !store.photos.contains_key(&photo.id());
        let fresh = || (photo.bytes().to_vec(), Card { kept: now, small: Vec::new() });
        let (_, card) = store.photos.entry(photo.id()).or_insert_with(fresh);
        card.kept = now;
        if let Some(small) = small {
            card.small = small.to_vec();
        }
        Ok(new)
    }

    async fn keep_small(&self, photo: PhotoId, small: &[u8]) -> Result<(), StorageFault> {
        let mut store = self.store.borrow_mut();
        store.fault()?;
        if let Some((_, card)) = store.photos.get_mut(&photo) {
            card.small = small.to_vec();
        }
        Ok(())
    }

    async fn photo(&self, photo: PhotoId) -> Result<Option<Vec<u8>>, StorageFault> {
        let mut store = self.store.borrow_mut();
        store.fault()?;
        Ok(store.photos.get(&photo).map(|(bytes, _)| bytes.clone()))
    }

    async fn small(&self, photo: PhotoId) -> Result<Option<Vec<u8>>, StorageFault> {
        let mut store = self.store.borrow_mut();
        store.fault()?;
        Ok(store.photos.get(&photo).map(|(_, card)| card.small.clone()).filter(|small| !small.is_empty()))
    }

    async fn photos(&self) -> Result<BTreeSet<PhotoId>, StorageFault> {
        let mut store = self.store.borrow_mut();
        store.fault()?;
        Ok(store.photos.keys().copied().collect())
    }

    async fn forget_photos(&self, photos: &[PhotoId], before: u64) -> Result<u32, StorageFault> {
        let mut store = self.store.borrow_mut();
        store.fault()?;
        let stood = store.photos.len();
        store.photos.retain(|id, (_, card)| !(photos.contains(id) && card.kept < before));
        Ok((stood - store.photos.len()) as u32)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::journal::contract;

    fn fresh() -> MemoryStorage {
        let next = std::cell::Cell::new(0);
        MemoryStorage::new(move || {
            next.set(next.get() + 1);
            uuid::Uuid::from_u128(next.get())
        })
    }

    crate::storage_contract!(fresh(), |run| pollster::block_on(run));
    crate::photo_contract!(fresh(), |run| pollster::block_on(run));

    #[test]
    fn a_full_disk_keeps_no_half_of_a_photo() {
        use crate::photo::contract::photo;
        let storage = fresh();
        pollster::block_on(async {
            storage.fail_next(StorageFault::Full);
            assert_eq!(storage.keep_photo(&photo(1), Some(&[1]), 5).await, Err(StorageFault::Full));
            assert!(storage.photos().await.unwrap().is_empty());
            assert!(storage.keep_photo(&photo(1), Some(&[1]), 5).await.unwrap());
        });
    }

    #[test]
    fn a_full_disk_loses_nothing_that_was_saved() {
        let storage = fresh();
        let draft = contract::pull(1_000);
        pollster::block_on(async {
            storage.append(std::slice::from_ref(&draft)).await.unwrap();
            storage.fail_next(StorageFault::Full);
            assert_eq!(storage.append(std::slice::from_ref(&draft)).await, Err(StorageFault::Full));
            assert_eq!(storage.append(&[draft]).await.unwrap()[0].seq, 2);
        });
    }
}
