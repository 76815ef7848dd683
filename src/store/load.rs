//! Loading the shop: the checkpoint and the entries after it, or the whole journal if the checkpoint cannot be used.

use super::Store;
use super::folded::{LoadError, LoadedShop, read_folded};
use super::long_work::{Asked, MANY_FACTS, Task, Watch, refold};
use crate::lazy::{ChunkLoadError, Work, chunk};
use crate::platform::app_worker::Ended;
use crate::platform::indexed_db::IndexedDb;
use lastpull_core::facts::Opened;
use lastpull_core::journal::StorageFault;
use wasm_bindgen::JsValue;

/// Reads and folds what is stored. If all of it must be folded and it is much, a worker of this store does that.
pub(super) async fn read(storage: &IndexedDb, store: Option<Store>) -> Result<LoadedShop, LoadError> {
    let opened = match read_folded(storage).await? {
        Ok(loaded) => return Ok(loaded),
        Err(opened) => opened,
    };
    match split_read_all(storage.clone(), opened, store).await {
        Ok(reading) => Ok(reading.await?),
        Err(ChunkLoadError) => Err(LoadError::ChunkNotLoaded),
    }
}

chunk! {
    archive: fn split_read_all(storage: IndexedDb, opened: Opened, store: Option<Store>) -> Result<Work<Result<LoadedShop, StorageFault>>, ChunkLoadError> {
        Ok(Box::pin(read_all(storage, opened, store)))
    }
}

/// Folds the whole journal.
async fn read_all(storage: IndexedDb, opened: Opened, store: Option<Store>) -> Result<LoadedShop, StorageFault> {
    if let Some(store) = store.filter(|_| opened.head.coverage.len() >= MANY_FACTS) {
        let task = Task::Refold { database: storage.name() };
        let asked = store.start_work(&task, &JsValue::UNDEFINED).await;
        store.end_work(Ended::Failed);
        if matches!(asked, Asked::Answered(_))
            && let Ok(Ok(loaded)) = read_folded(&storage).await
        {
            return Ok(loaded);
        }
    }
    let (opened, shop) = refold::read_all(&storage, opened, &Watch::none()).await?;
    Ok(LoadedShop { opened, shop, from_scratch: true })
}
