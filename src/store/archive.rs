//! Work on the whole journal: compacting its tail, merging another device's entries. Rarely
//! needed, and so in a chunk of its own.

use super::Store;
use super::load::{LoadError, read};
use crate::lazy::{ChunkLoadError, Work, chunk};
use crate::platform::{clock, spawn_local, tabs};
use lastpull_core::facts::{Entry, Fact, Journal};
use lastpull_core::journal::{Checkpoint, MergeProblem, Storage, StorageFault, TooMany, merge};
use lastpull_core::photo::{PhotoStore, Photos};
use lastpull_core::shop::Shop;
use leptos::prelude::*;

/// What a merge added.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct MergeSummary {
    /// Number of facts that were new here.
    pub new: u64,
    /// Number of facts that were already here.
    pub known: u64,
    /// Number of facts missing in between.
    pub gaps: u64,
    /// Number of facts dated further ahead than clocks drift.
    pub far_ahead: u64,
    /// Number of times that two devices were found to have counted on under one id.
    pub forks: u64,
    /// Whether this device has a new id, because another one counted under its old one.
    pub renewed: bool,
}

/// Why entries were not merged. Nothing was changed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum MergeError {
    /// They are not from a shop.
    TooMany(TooMany),
    /// They could not be stored.
    Storage(StorageFault),
    /// The code for reading the whole journal could not be fetched.
    ChunkNotLoaded,
}

impl From<MergeProblem> for MergeError {
    fn from(problem: MergeProblem) -> Self {
        match problem {
            MergeProblem::TooMany(many) => Self::TooMany(many),
            MergeProblem::Storage(fault) => Self::Storage(fault),
        }
    }
}

impl From<LoadError> for MergeError {
    fn from(error: LoadError) -> Self {
        match error {
            LoadError::Storage(fault) => Self::Storage(fault),
            LoadError::ChunkNotLoaded => Self::ChunkNotLoaded,
        }
    }
}

chunk! {
    archive: fn split_compact(store: Store, long: bool) -> Result<Work<()>, ChunkLoadError> {
        Ok(Box::pin(store.compact_now(long)))
    }
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
            let _ = storage.delete_photos(&gone, now - Photos::GRACE).await;
        }
    }

    /// Merges entries of other devices into the journal: all of them or none.
    pub(super) async fn merge(self, arriving: Vec<Entry>) -> Result<MergeSummary, MergeError> {
        let storage = self.storage.get_value();
        let device = self.device.get_untracked();
        let fold = |journal: &Journal| Checkpoint::of(&Shop::fold(journal));
        let merged = merge(&storage, arriving, clock::now().now, fold).await?;
        if merged.new > 0 || merged.renewed.is_some() {
            self.reload().await?;
            tabs::notify_changed();
        }
        if let Some(new) = merged.renewed
            && let Some(name) = self.shop.with_untracked(|shop| shop.devices.get(&device).cloned())
        {
            self.record(new, Fact::DeviceNamed(name));
        }
        Ok(MergeSummary {
            new: merged.new,
            known: merged.known,
            gaps: merged.gaps,
            far_ahead: merged.far_ahead,
            forks: merged.forks.len() as u64,
            renewed: merged.renewed.is_some(),
        })
    }
}
