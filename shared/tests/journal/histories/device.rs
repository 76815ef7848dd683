//! A device as the app works on one: its disk, and the shop it has folded in memory.

use super::crash::CrashingDisk;
use lastpull_core::facts::{Draft, Entry, Fact, Journal};
use lastpull_core::ids::{DeviceId, Subject};
use lastpull_core::journal::{
    Checkpoint, Coverage, Head, MemoryStorage, MergeProblem, Packed, Storage, StorageFault, assign_sequence,
    in_fold_order, merge,
};
use lastpull_core::shop::Shop;
use lastpull_core::time::WallTime;
use pollster::block_on;
use std::cell::Cell;
use std::rc::Rc;
use uuid::Uuid;

/// Why a device did not do what it was asked to.
#[derive(Clone, Debug, PartialEq)]
pub enum Failed {
    /// The disk refused, or the app was stopped.
    Storage(StorageFault),
    /// The file was not merged.
    Merge(MergeProblem),
}

impl From<StorageFault> for Failed {
    fn from(fault: StorageFault) -> Self {
        Self::Storage(fault)
    }
}

/// Gives every device, and every device erased, an id of its own.
#[derive(Clone, Default)]
pub struct NewIds(Rc<Cell<u128>>);

impl NewIds {
    pub fn next(&self) -> Uuid {
        self.0.set(self.0.get() + 1);
        Uuid::from_u128(self.0.get())
    }
}

/// A device.
pub struct Device {
    /// The device's clock, which may be wrong.
    pub now: WallTime,
    /// Its disk.
    pub disk: CrashingDisk,
    shop: Shop,
}

impl Device {
    /// A device with nothing on it.
    pub fn new(ids: &NewIds, now: WallTime) -> Self {
        let ids = ids.clone();
        let disk = CrashingDisk::of(MemoryStorage::new(move || ids.next()));
        Self { now, disk, shop: Shop::default() }
    }

    /// Folds what is stored: the checkpoint and the tail, or everything if that does not do.
    pub fn reload(&mut self) -> Result<(), Failed> {
        let opened = block_on(self.disk.open())?;
        let checkpoint = opened.checkpoint.as_ref().map_or(Some(Shop::default()), Checkpoint::shop);
        if let Some(mut shop) = checkpoint {
            if shop.apply_all(&opened.tail) && shop.fact_count() == opened.head.coverage.len() {
                self.shop = shop;
                return Ok(());
            }
        }
        let all = block_on(self.disk.read_all())?;
        assert_eq!(all.len() as u64, opened.head.coverage.len(), "as many facts as the head says");
        self.shop = Shop::fold(&Journal::stored(all));
        Ok(())
    }

    /// Records facts in one transaction. A disk that is full for a moment is tried again.
    pub fn record(&mut self, facts: &[(Subject, Fact)]) -> Result<Vec<Entry>, Failed> {
        let draft = |(subject, fact): &(Subject, Fact)| Draft { at: self.now, subject: *subject, fact: fact.clone() };
        let drafts: Vec<Draft> = facts.iter().map(draft).collect();
        let entries = match block_on(self.disk.append(&drafts)) {
            Err(StorageFault::Full) => block_on(self.disk.append(&drafts))?,
            other => other?,
        };
        self.show(&entries)?;
        Ok(entries)
    }

    /// Takes into the shop in memory what this or another tab has saved.
    pub fn show(&mut self, entries: &[Entry]) -> Result<(), Failed> {
        if self.shop.apply_all(entries) { Ok(()) } else { self.reload() }
    }

    /// Packs the tail and saves the checkpoint.
    pub fn compact(&mut self) -> Result<(), Failed> {
        self.reload()?;
        let head = block_on(self.disk.open())?.head;
        block_on(self.disk.compact(&head, &Packed::default(), head.clock, &Checkpoint::of(&self.shop)))?;
        Ok(())
    }

    /// Takes in the entries of a file: all of them or none. `meanwhile` runs once before the result is stored, as another
    /// tab would; the merge begins again if that has written. Returns which entries were new.
    pub fn take_in(&mut self, file: &[Entry], meanwhile: impl FnOnce(&Self)) -> Result<Coverage, Failed> {
        let meanwhile = Cell::new(Some(meanwhile));
        let fold = |entries: &mut dyn Iterator<Item = Entry>| {
            if let Some(meanwhile) = meanwhile.take() {
                meanwhile(self);
            }
            Checkpoint::of(&Shop::fold_entries(entries))
        };
        let merged =
            block_on(merge(&self.disk, &Packed::arriving(file.to_vec()), self.now, fold)).map_err(|problem| {
                match problem {
                    MergeProblem::Storage(fault) => Failed::Storage(fault),
                    MergeProblem::TooMany(_) => Failed::Merge(problem),
                }
            })?;
        self.reload()?;
        Ok(merged.added)
    }

    /// Takes out what an import brought: all of it or nothing.
    pub fn take_back(&mut self, brought: &Coverage) -> Result<(), Failed> {
        let head = block_on(self.disk.open())?.head;
        let remaining = block_on(self.disk.read_packed())?.filtered(|entry| !brought.holds(entry.device, entry.seq));
        let mut shop = Shop::default();
        in_fold_order(&remaining, &mut |entries| shop = Shop::fold_entries(entries));
        block_on(self.disk.withdraw(&head, &remaining, &Checkpoint::of(&shop)))?;
        self.reload()
    }

    /// Facts that could not be saved, as they are put into a file: under an id of their own.
    pub fn rescued(&self, facts: &[(Subject, Fact)], id: DeviceId) -> Vec<Entry> {
        let draft = |(subject, fact): &(Subject, Fact)| Draft { at: self.now, subject: *subject, fact: fact.clone() };
        let drafts: Vec<Draft> = facts.iter().map(draft).collect();
        assign_sequence(&mut Head::default(), id, &drafts)
    }

    /// Saves facts after all that are in a file: as the entries that they are there.
    pub fn adopt(&mut self, rescued: &[Entry]) -> Result<(), Failed> {
        let entries = match block_on(self.disk.adopt(rescued)) {
            Err(StorageFault::Full) => block_on(self.disk.adopt(rescued))?,
            other => other?,
        };
        assert_eq!(entries, rescued, "nobody else has numbers of this id");
        self.show(&entries)
    }

    /// A device that everything of this one was copied to, which goes on by itself from here.
    pub fn cloned(&self) -> Self {
        Self { now: self.now, disk: CrashingDisk::of(self.disk.disk().cloned_device()), shop: self.shop.clone() }
    }

    /// Erases everything on the device, its id too.
    pub fn erase(&mut self) -> Result<(), Failed> {
        block_on(self.disk.erase())?;
        self.reload()
    }

    /// Everything stored, read past any stop of the app.
    pub fn stored(&self) -> Vec<Entry> {
        block_on(self.disk.disk().read_all()).unwrap()
    }

    /// Bytes of the shop in memory.
    pub fn shop_bytes(&self) -> Vec<u8> {
        Checkpoint::of(&self.shop).bytes
    }
}
