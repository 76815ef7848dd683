//! Folding everything that is stored.

use super::super::folded::{LoadError, LoadedShop, read_folded};
use super::{Step, Watch};
use crate::platform::indexed_db::IndexedDb;
use lastpull_core::exchange::Share;
use lastpull_core::facts::{Entry, Fact, Opened};
use lastpull_core::journal::{Checkpoint, Packed, Storage, StorageFault, in_fold_order};
use lastpull_core::shop::Shop;

/// Tries while other tabs write.
const TRIES: u32 = 6;

/// The shop of these entries.
pub(in super::super) fn fold(stored: &Packed<Fact>, watch: &Watch) -> Shop {
    let mut shop = Shop::default();
    in_fold_order(stored, &mut |entries| {
        shop = Shop::fold_entries(watch.count(Step::Folding, stored.len(), &mut *entries));
    });
    shop
}

/// The checkpoint of entries that come in the order of the fold.
pub(in super::super) fn checkpoint_of(entries: &mut dyn Iterator<Item = Entry>, of: u64, watch: &Watch) -> Checkpoint {
    let shop = Shop::fold_entries(watch.count(Step::Folding, of, entries));
    watch.tell(Step::Storing, Share { done: of, of });
    Checkpoint::of(&shop)
}

/// Reads and folds everything that is stored.
pub(in super::super) async fn read_all(
    storage: &IndexedDb,
    opened: Opened,
    watch: &Watch,
) -> Result<(Opened, Shop), StorageFault> {
    let stored = storage.read_packed().await?;
    let shop = fold(&stored, watch);
    if stored.len() == opened.head.coverage.len() {
        return Ok((opened, shop));
    }
    // Another tab saved between the two reads, or bytes are missing: never continue as if all were here.
    let again = storage.open().await?;
    if stored.len() != again.head.coverage.len() {
        return Err(StorageFault::Stale);
    }
    Ok((again, shop))
}

/// Folds everything that is stored, and saves the checkpoint.
pub(in super::super) async fn refold(storage: &IndexedDb, watch: &Watch) -> Result<(), StorageFault> {
    save(storage, async || {
        let (opened, shop) = read_all(storage, storage.open().await?, watch).await?;
        let of = opened.head.coverage.len();
        watch.tell(Step::Storing, Share { done: of, of });
        Ok((opened, shop))
    })
    .await
}

/// Packs the entries of the tail and saves the checkpoint with them.
pub(in super::super) async fn compact(storage: &IndexedDb, watch: &Watch) -> Result<(), StorageFault> {
    save(storage, async || {
        let LoadedShop { opened, shop, .. } = read_here(storage, watch).await?;
        Ok((opened, shop))
    })
    .await
}

/// Saves the checkpoint of the shop that `read` gives, and packs the tail. It is read again if another tab wrote meanwhile.
async fn save(
    storage: &IndexedDb,
    read: impl AsyncFn() -> Result<(Opened, Shop), StorageFault>,
) -> Result<(), StorageFault> {
    let mut tries = 0;
    loop {
        let done = match read().await {
            Ok((opened, shop)) => {
                let checkpoint = Checkpoint::of(&shop);
                drop(shop);
                storage.compact(&opened.head, &Packed::default(), opened.head.clock, &checkpoint).await.map(drop)
            }
            Err(fault) => Err(fault),
        };
        match done {
            Err(StorageFault::Stale) if tries < TRIES => tries += 1,
            done => return done,
        }
    }
}

/// Reads and folds what is stored, with no worker's help.
pub(super) async fn read_here(storage: &IndexedDb, watch: &Watch) -> Result<LoadedShop, StorageFault> {
    match read_folded(storage).await {
        Ok(Ok(loaded)) => Ok(loaded),
        Ok(Err(opened)) => {
            let (opened, shop) = read_all(storage, opened, watch).await?;
            Ok(LoadedShop { opened, shop, from_scratch: true })
        }
        Err(LoadError::Storage(fault)) => Err(fault),
        Err(LoadError::ChunkNotLoaded) => Err(StorageFault::Closed),
    }
}
