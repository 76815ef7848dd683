//! Compacting the journal's tail, and deleting photos. Rarely needed, and so in a chunk of its own.

use super::Store;
use super::long_work::refold::compact;
use super::long_work::{Asked, MANY_FACTS, Task, Watch, from_answer};
use crate::lazy::{ChunkLoadError, Work, chunk};
use crate::platform::app_worker::Ended;
use crate::platform::{clock, spawn_local};
use lastpull_core::journal::StorageFault;
use lastpull_core::photo::{PhotoStore, Photos};
use lastpull_core::shop::Shop;
use leptos::prelude::*;
use wasm_bindgen::JsValue;

chunk! {
    archive: fn split_compact(store: Store, long: bool) -> Result<Work<()>, ChunkLoadError> {
        Ok(Box::pin(store.compact_now(long)))
    }
}

chunk! {
    archive: fn split_archive() -> Result<(), ChunkLoadError> {
        Ok(())
    }
}

/// Fetches the chunk ahead: it exports and rescues the data, and must not be what is missing when that is needed.
///
/// # Errors
/// [`ChunkLoadError`] if it cannot be fetched; it is fetched again when it is needed.
pub async fn fetch_archive() -> Result<(), ChunkLoadError> {
    split_archive().await
}

impl Store {
    /// Compacts a long tail, saves the checkpoint, and deletes photos that nothing shows. Safety never depends on it; a
    /// failed attempt is repeated at the next opening.
    pub(super) fn compact(self, long: bool) {
        spawn_local(async move {
            if let Ok(compacting) = split_compact(self, long).await {
                compacting.await;
            }
        });
    }

    /// Does the work of [`Store::compact`] now.
    async fn compact_now(self, long: bool) {
        let packed = self.recent.get_value();
        if long && self.compact_tail().await {
            // What was recorded meanwhile is in the tail, and all of it if the journal was read again.
            self.recent.update_value(|recent| {
                if recent.starts_with(&packed) {
                    recent.drain(..packed.len());
                }
            });
        }
        self.forget_old_photos().await;
    }

    /// Packs the tail; returns whether it is done. A large shop takes long enough to be felt at the count: a worker packs
    /// it then, unless one is busy.
    async fn compact_tail(self) -> bool {
        let storage = self.storage.get_value();
        let many = self.shop.with_untracked(Shop::fact_count) >= MANY_FACTS;
        if many && self.session.with_value(|session| session.worker.is_none()) {
            match self.start_work(&Task::Compact { database: storage.name() }, &JsValue::UNDEFINED).await {
                Asked::Answered(answer) => {
                    self.end_work(Ended::Failed);
                    return matches!(from_answer::<(), StorageFault>(&answer.bytes), Some(Ok(())));
                }
                Asked::Cancelled => return false,
                Asked::NotDone => self.end_work(Ended::Failed),
            }
        }
        compact(&storage, &Watch::none()).await.is_ok()
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
        let gone = self.shop.with_untracked(|shop| shop.photos_to_delete(&stored, now));
        if !gone.is_empty() {
            let _ = storage.delete_photos(&gone, now - Photos::GRACE).await;
        }
    }
}
