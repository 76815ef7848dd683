//! Work on the whole journal: reading all of it, compacting its tail, merging another device's entries. Rarely
//! needed, and so in a chunk of its own.

use super::Store;
use super::open::{LoadedShop, MergeError, MergeSummary, read};
use crate::lazy::{ChunkLoadError, chunk};
use crate::platform::indexed_db::IndexedDb;
use crate::platform::{clock, tabs};
use lastpull_core::facts::{Entry, Journal, Opened};
use lastpull_core::journal::{Checkpoint, Conflict, Gap, Head, HybridClock, Storage, StorageFault};
use lastpull_core::photo::{PhotoStore, Photos};
use lastpull_core::shop::Shop;
use leptos::prelude::*;
use std::pin::Pin;

/// A future of a function in the chunk.
pub(super) type Work<T> = Pin<Box<dyn Future<Output = T>>>;

chunk! {
    archive: fn split_read_all(storage: IndexedDb, opened: Opened) -> Result<Work<Result<LoadedShop, StorageFault>>, ChunkLoadError> {
        Ok(Box::pin(read_all(storage, opened)))
    }
}

chunk! {
    archive: fn split_compact(store: Store, long: bool) -> Result<Work<()>, ChunkLoadError> {
        Ok(Box::pin(store.compact_now(long)))
    }
}

/// Loads the chunk and folds everything that is stored.
pub(super) async fn read_all_lazily(
    storage: IndexedDb,
    opened: Opened,
) -> Result<Result<LoadedShop, StorageFault>, ChunkLoadError> {
    Ok(split_read_all(storage, opened).await?.await)
}

/// Loads the chunk and compacts the journal.
pub(super) async fn compact_lazily(store: Store, long: bool) -> Result<(), ChunkLoadError> {
    split_compact(store, long).await?.await;
    Ok(())
}

/// Folds everything that is stored, if the checkpoint cannot be used.
pub(crate) async fn read_all(storage: IndexedDb, opened: Opened) -> Result<LoadedShop, StorageFault> {
    let all = Journal::of(storage.read_all().await?).map_err(|conflict| conflict_fault(&conflict))?;
    if all.len() as u64 != opened.head.coverage.len() {
        // Another tab saved between the two reads, or bytes are missing: never continue as if all were here.
        let again = storage.open().await?;
        if all.len() as u64 != again.head.coverage.len() {
            return Err(StorageFault::Stale);
        }
        return Ok(LoadedShop { opened: again, shop: Shop::fold(&all), from_scratch: true });
    }
    Ok(LoadedShop { opened, shop: Shop::fold(&all), from_scratch: true })
}

fn conflict_fault(conflict: &Conflict) -> StorageFault {
    StorageFault::Other(format!("two facts under number {} of {}", conflict.seq, conflict.device))
}

impl Store {
    /// Compacts the tail if it is long, saves the checkpoint, and deletes photos that nothing shows.
    pub(crate) async fn compact_now(self, long: bool) {
        let storage = self.storage.get_value();
        if long {
            if let Ok(folded) = read(&storage).await {
                let checkpoint = Checkpoint::of(&folded.shop);
                let head = &folded.opened.head;
                if storage.compact(head, &[], head.clock, &checkpoint).await.is_ok() {
                    self.recent.set_value(Vec::new());
                }
            }
        }
        self.forget_old_photos().await;
    }

    /// Deletes the bytes of photos that nothing shows. A fact of a newer version may name photos in a way
    /// not known here: all are kept then.
    async fn forget_old_photos(self) {
        let storage = self.storage.get_value();
        if self.shop.with_untracked(|shop| !shop.unknown.is_empty()) {
            return;
        }
        let Ok(stored) = storage.photos().await else { return };
        let now = clock::now().now;
        let gone = self.shop.with_untracked(|shop| shop.photos.to_delete(&stored, now));
        if !gone.is_empty() {
            let _ = storage.delete_photos(&gone, now.saturating_sub(Photos::GRACE)).await;
        }
    }

    /// Merges entries of other devices into the journal: all of them or none.
    pub(super) async fn merge(self, arriving: Vec<Entry>) -> Result<MergeSummary, MergeError> {
        let storage = self.storage.get_value();
        let mut tries = 0;
        loop {
            let folded = read(&storage).await.map_err(MergeError::Storage)?;
            let head: Head = folded.opened.head;
            let mut all =
                Journal::of(storage.read_all().await.map_err(MergeError::Storage)?).map_err(MergeError::Conflict)?;
            let merged = all.absorb(arriving.clone()).map_err(MergeError::Conflict)?;
            let new = all.beyond(&head.coverage);
            let now = clock::now().now;
            let mut hybrid: HybridClock = head.clock;
            let far_ahead = new.iter().filter(|entry| hybrid.observe(entry.stamp, now).is_err()).count() as u64;
            if new.is_empty() {
                let gaps = head.coverage.gaps().iter().map(Gap::len).sum();
                return Ok(MergeSummary { new: 0, known: merged.known, gaps, far_ahead });
            }
            let checkpoint = Checkpoint::of(&Shop::fold(&all));
            match storage.compact(&head, &new, hybrid, &checkpoint).await {
                Ok(head) => {
                    self.reload().await.map_err(MergeError::Storage)?;
                    tabs::notify_changed();
                    let gaps = head.coverage.gaps().iter().map(Gap::len).sum();
                    return Ok(MergeSummary { new: new.len() as u64, known: merged.known, gaps, far_ahead });
                }
                Err(StorageFault::Stale) if tries < 5 => tries += 1,
                Err(fault) => return Err(MergeError::Storage(fault)),
            }
        }
    }
}
