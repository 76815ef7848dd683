//! A disk on which the app can be stopped at any transaction.

use lastpull_core::facts::{Draft, Entry, Fact, Opened};
use lastpull_core::ids::DeviceId;
use lastpull_core::journal::{Checkpoint, Head, HybridClock, MemoryStorage, Packed, RawJournal, Storage, StorageFault};
use std::cell::Cell;
use std::rc::Rc;

/// Where in a transaction the app is stopped. A transaction is all or nothing, so there are two places.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Moment {
    /// Before it is committed: it never happened.
    Before,
    /// After it is committed, and before the app hears of it.
    After,
}

/// When to stop the app, and how far it came. Shared by the handles of all its tabs.
#[derive(Default)]
struct Plan {
    /// Transactions until the stop, and where in that transaction.
    stop: Cell<Option<(u32, Moment)>>,
    stopped: Cell<bool>,
    full: Cell<bool>,
    transactions: Cell<u32>,
}

/// A handle on the disk.
#[derive(Clone)]
pub struct CrashingDisk {
    disk: MemoryStorage<Fact>,
    plan: Rc<Plan>,
}

impl CrashingDisk {
    pub fn of(disk: MemoryStorage<Fact>) -> Self {
        Self { disk, plan: Rc::default() }
    }

    /// Stops the app at the transaction after `transactions` more.
    pub fn stop_after(&self, transactions: u32, moment: Moment) {
        self.plan.stop.set(Some((transactions, moment)));
    }

    /// Makes the next transaction fail, as on a full disk.
    pub fn fill_for_a_moment(&self) {
        self.plan.full.set(true);
    }

    /// Whether the app was stopped: nothing works until [`restart`](Self::restart).
    pub fn is_stopped(&self) -> bool {
        self.plan.stopped.get()
    }

    /// Whether the app is still to be stopped: the transaction has not come.
    pub fn is_to_be_stopped(&self) -> bool {
        self.plan.stop.get().is_some()
    }

    /// Starts the app again.
    pub fn restart(&self) {
        self.plan.stopped.set(false);
        self.plan.stop.set(None);
        self.plan.full.set(false);
    }

    /// Number of transactions that were asked for.
    pub fn transactions(&self) -> u32 {
        self.plan.transactions.get()
    }

    /// The disk itself, as another program would read it.
    pub fn disk(&self) -> &MemoryStorage<Fact> {
        &self.disk
    }

    async fn transaction<T>(&self, work: impl AsyncFnOnce() -> Result<T, StorageFault>) -> Result<T, StorageFault> {
        if self.is_stopped() {
            return Err(StorageFault::Closed);
        }
        self.plan.transactions.set(self.plan.transactions.get() + 1);
        if self.plan.full.take() {
            return Err(StorageFault::Full);
        }
        let now = match self.plan.stop.get() {
            Some((0, moment)) => Some(moment),
            Some((left, moment)) => {
                self.plan.stop.set(Some((left - 1, moment)));
                None
            }
            None => None,
        };
        self.plan.stopped.set(now.is_some());
        match now {
            None => work().await,
            Some(Moment::Before) => Err(StorageFault::Closed),
            Some(Moment::After) => {
                work().await?;
                Err(StorageFault::Closed)
            }
        }
    }
}

impl Storage<Fact> for CrashingDisk {
    async fn open(&self) -> Result<Opened, StorageFault> {
        self.transaction(async || self.disk.open().await).await
    }

    async fn append(&self, drafts: &[Draft]) -> Result<Vec<Entry>, StorageFault> {
        self.transaction(async || self.disk.append(drafts).await).await
    }

    async fn compact(
        &self,
        expected: &Head,
        added: &Packed<Fact>,
        clock: HybridClock,
        checkpoint: &Checkpoint,
    ) -> Result<Head, StorageFault> {
        self.transaction(async || self.disk.compact(expected, added, clock, checkpoint).await).await
    }

    async fn adopt(&self, entries: &[Entry]) -> Result<Vec<Entry>, StorageFault> {
        self.transaction(async || self.disk.adopt(entries).await).await
    }

    async fn withdraw(
        &self,
        expected: &Head,
        remaining: &Packed<Fact>,
        checkpoint: &Checkpoint,
    ) -> Result<Head, StorageFault> {
        self.transaction(async || self.disk.withdraw(expected, remaining, checkpoint).await).await
    }

    async fn renew_device(&self, old: DeviceId) -> Result<DeviceId, StorageFault> {
        self.transaction(async || self.disk.renew_device(old).await).await
    }

    async fn read_raw(&self) -> RawJournal {
        self.disk.read_raw().await
    }

    async fn read_packed(&self) -> Result<Packed<Fact>, StorageFault> {
        self.transaction(async || self.disk.read_packed().await).await
    }

    async fn erase(&self) -> Result<(), StorageFault> {
        self.transaction(async || self.disk.erase().await).await
    }
}
