//! The shop from its checkpoint and the entries after it.

use crate::lazy::{ChunkLoadError, chunk};
use crate::platform::indexed_db::IndexedDb;
use lastpull_core::facts::{Entry, Opened};
use lastpull_core::journal::{Checkpoint, JournalFact, Storage, StorageFault};
use lastpull_core::shop::Shop;

/// The shop as it was loaded.
pub(super) struct LoadedShop {
    pub(super) opened: Opened,
    pub(super) shop: Shop,
    /// Whether the checkpoint could not be used.
    pub(super) from_scratch: bool,
}

/// Why the shop could not be loaded. Nothing was written.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum LoadError {
    /// The journal could not be read.
    Storage(StorageFault),
    /// The whole journal had to be read, and the code for that could not be fetched.
    ChunkNotLoaded,
}

impl From<StorageFault> for LoadError {
    fn from(fault: StorageFault) -> Self {
        Self::Storage(fault)
    }
}

/// The shop from the checkpoint and the tail; what was read, if the checkpoint cannot be used.
pub(super) async fn read_folded(storage: &IndexedDb) -> Result<Result<LoadedShop, Opened>, LoadError> {
    let mut opened = storage.open().await?;
    if has_unknown(&opened.tail) {
        // Facts stored by another version. The code that reads them from JSON is in a chunk.
        opened.tail = split_recognize(opened.tail).await.map_err(|ChunkLoadError| LoadError::ChunkNotLoaded)?;
    }
    let saved = opened.checkpoint.as_ref().and_then(Checkpoint::shop);
    if let Some(mut shop) = saved.or_else(|| opened.checkpoint.is_none().then(Shop::default)) {
        // The number of facts folded must be the number stored, or the checkpoint is missing some.
        if shop.apply_all(&opened.tail) && shop.fact_count() == opened.head.coverage.len() {
            return Ok(Ok(LoadedShop { opened, shop, from_scratch: false }));
        }
    }
    Ok(Err(opened))
}

/// Whether one of these facts is stored as unknown, which this version may know.
pub(super) fn has_unknown(entries: &[Entry]) -> bool {
    entries.iter().any(|entry| entry.fact.as_unknown().is_some())
}

chunk! {
    archive: fn split_recognize(tail: Vec<Entry>) -> Result<Vec<Entry>, ChunkLoadError> {
        Ok(tail.into_iter().map(Entry::recognized).collect())
    }
}
