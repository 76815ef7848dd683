//! The journal in memory: for tests, for the demo's making, and as the plainest reading of the
//! storage contract. Clones share one store, as two tabs share one database.

use super::segment::Segment;
use super::{
    Checkpoint, Draft, Entry, Head, HybridClock, JournalFact, Opened, Packed, RawJournal, Storage, StorageFault,
    adopt_into, assign_sequence, record, withdraw_from,
};
use crate::ids::DeviceId;
use std::cell::RefCell;
use std::collections::BTreeMap;
use std::marker::PhantomData;
use std::rc::Rc;

/// A journal kept in memory, as the bytes a disk would keep.
pub struct MemoryStorage<F> {
    store: Rc<RefCell<Store>>,
    new_device: Rc<dyn Fn() -> DeviceId>,
    facts: PhantomData<F>,
}

impl<F> Clone for MemoryStorage<F> {
    fn clone(&self) -> Self {
        Self { store: self.store.clone(), new_device: self.new_device.clone(), facts: PhantomData }
    }
}

/// Bytes kept beside the journal, which the same erasing forgets: a photo, and a card about it.
pub(crate) type Blobs = BTreeMap<Vec<u8>, (Vec<u8>, Vec<u8>)>;

#[derive(Clone, Default)]
struct Store {
    device: Option<DeviceId>,
    head: Head,
    tail: Vec<Vec<u8>>,
    segments: Vec<Segment>,
    checkpoint: Option<Checkpoint>,
    blobs: Blobs,
    next_fault: Option<StorageFault>,
}

impl<F> MemoryStorage<F> {
    /// An empty store that takes its device id from `new_device`.
    pub fn new(new_device: impl Fn() -> DeviceId + 'static) -> Self {
        Self { store: Rc::default(), new_device: Rc::new(new_device), facts: PhantomData }
    }

    /// The store of a device that was cloned: everything of this one, which goes on by itself from here.
    pub fn cloned_device(&self) -> Self {
        Self { store: Rc::new(RefCell::new(self.store.borrow().clone())), ..self.clone() }
    }

    /// Makes the next transaction fail, as a full or removed disk would.
    pub fn fail_next(&self, fault: StorageFault) {
        self.store.borrow_mut().next_fault = Some(fault);
    }

    /// One transaction over the bytes kept beside the journal.
    ///
    /// # Errors
    /// The fault that [`fail_next`](Self::fail_next) asked for.
    pub(crate) fn with_blobs<T>(&self, work: impl FnOnce(&mut Blobs) -> T) -> Result<T, StorageFault> {
        let mut store = self.store.borrow_mut();
        store.fault()?;
        Ok(work(&mut store.blobs))
    }

    fn device(&self, store: &mut Store) -> DeviceId {
        *store.device.get_or_insert_with(|| (self.new_device)())
    }
}

impl Store {
    fn fault(&mut self) -> Result<(), StorageFault> {
        self.next_fault.take().map_or(Ok(()), Err)
    }

    /// Begins a transaction that builds on the head `expected`.
    fn begin_at(&mut self, expected: &Head) -> Result<(), StorageFault> {
        self.fault()?;
        if self.head.coverage == expected.coverage { Ok(()) } else { Err(StorageFault::Stale) }
    }

    fn tail<F: JournalFact>(&self) -> Result<Vec<Entry<F>>, StorageFault> {
        let decode = |bytes: &Vec<u8>| super::record::decode(bytes).map_err(StorageFault::Unreadable);
        self.tail.iter().map(decode).collect()
    }
}

impl<F: JournalFact> Storage<F> for MemoryStorage<F> {
    async fn open(&self) -> Result<Opened<F>, StorageFault> {
        let mut store = self.store.borrow_mut();
        store.fault()?;
        let device = self.device(&mut store);
        let (head, checkpoint) = (store.head.clone(), store.checkpoint.clone());
        Ok(Opened { device, head, checkpoint, tail: store.tail()? })
    }

    async fn append(&self, drafts: &[Draft<F>]) -> Result<Vec<Entry<F>>, StorageFault> {
        let mut store = self.store.borrow_mut();
        store.fault()?;
        let device = self.device(&mut store);
        let entries = assign_sequence(&mut store.head, device, drafts);
        store.tail.extend(entries.iter().map(super::record::encode));
        Ok(entries)
    }

    async fn compact(
        &self,
        expected: &Head,
        added: &Packed<F>,
        clock: HybridClock,
        checkpoint: &Checkpoint,
    ) -> Result<Head, StorageFault> {
        let mut store = self.store.borrow_mut();
        store.begin_at(expected)?;
        let tail: Vec<Entry<F>> = store.tail()?;
        store.segments.extend_from_slice(added.with_tail(&tail).segments());
        store.tail.clear();
        store.checkpoint = Some(checkpoint.clone());
        store.head.coverage.add_coverage(&added.coverage());
        store.head.clock = clock;
        Ok(store.head.clone())
    }

    async fn adopt(&self, entries: &[Entry<F>]) -> Result<Vec<Entry<F>>, StorageFault> {
        let all = self.read_all().await?;
        let mut store = self.store.borrow_mut();
        let device = self.device(&mut store);
        let adopted = adopt_into(&mut store.head, device, entries, |entry| all.contains(entry));
        store.tail.extend(adopted.new.iter().map(record::encode));
        Ok(adopted.all)
    }

    async fn withdraw(
        &self,
        expected: &Head,
        remaining: &Packed<F>,
        checkpoint: &Checkpoint,
    ) -> Result<Head, StorageFault> {
        let mut store = self.store.borrow_mut();
        store.begin_at(expected)?;
        store.head = withdraw_from(&store.head, remaining);
        store.tail.clear();
        store.segments = remaining.segments().to_vec();
        store.checkpoint = Some(checkpoint.clone());
        Ok(store.head.clone())
    }

    async fn read_raw(&self) -> RawJournal {
        let mut store = self.store.borrow_mut();
        if let Err(fault) = store.fault() {
            return RawJournal { fault: Some(fault), ..RawJournal::default() };
        }
        RawJournal {
            head: Some(store.head.to_bytes()),
            tail: store.tail.iter().enumerate().map(|(at, bytes)| (at.to_string(), bytes.clone())).collect(),
            segments: store
                .segments
                .iter()
                .map(|segment| (format!("{}-{}", segment.device, segment.first), segment.bytes.to_vec()))
                .collect(),
            checkpoint: store.checkpoint.as_ref().map(|checkpoint| checkpoint.bytes.clone()),
            fault: None,
        }
    }

    async fn renew_device(&self, old: DeviceId) -> Result<DeviceId, StorageFault> {
        let mut store = self.store.borrow_mut();
        store.fault()?;
        if self.device(&mut store) == old {
            store.device = Some((self.new_device)());
        }
        Ok(self.device(&mut store))
    }

    async fn read_packed(&self) -> Result<Packed<F>, StorageFault> {
        let mut store = self.store.borrow_mut();
        store.fault()?;
        let segments = store.segments.iter().map(|segment| segment.bytes.to_vec());
        Packed::stored(&store.tail()?, segments).map_err(StorageFault::Unreadable)
    }

    async fn erase(&self) -> Result<(), StorageFault> {
        let mut store = self.store.borrow_mut();
        store.fault()?;
        *store = Store::default();
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::facts::Fact;
    use crate::journal::contract;

    fn fresh() -> MemoryStorage<Fact> {
        let next = std::cell::Cell::new(0);
        MemoryStorage::new(move || {
            next.set(next.get() + 1);
            uuid::Uuid::from_u128(next.get())
        })
    }

    crate::storage_contract!(fresh(), |run| pollster::block_on(run));

    #[test]
    fn a_full_disk_loses_no_saved_fact() {
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
