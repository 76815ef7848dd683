//! Compacting the journal's tail, and deleting photos. Rarely needed, and so in a chunk of its own.

use super::Store;
use super::load::read;
use crate::lazy::{ChunkLoadError, Work, chunk};
use crate::platform::{clock, spawn_local};
use lastpull_core::journal::{Checkpoint, Packed, Storage};
use lastpull_core::photo::{PhotoStore, Photos};
use leptos::prelude::*;

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
        let storage = self.storage.get_value();
        if long {
            if let Ok(folded) = read(&storage, None).await {
                let checkpoint = Checkpoint::of(&folded.shop);
                let head = &folded.opened.head;
                if storage.compact(head, &Packed::default(), head.clock, &checkpoint).await.is_ok() {
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
        let gone = self.shop.with_untracked(|shop| shop.photos_to_delete(&stored, now));
        if !gone.is_empty() {
            let _ = storage.delete_photos(&gone, now - Photos::GRACE).await;
        }
    }
}
