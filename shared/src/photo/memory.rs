//! Photos in memory, beside a journal in memory.

use super::{JpegPhoto, PhotoStore, StoredPhotoInfo};
use crate::ids::PhotoId;
use crate::journal::{MemoryStorage, StorageFault};
use crate::time::WallTime;
use std::collections::BTreeSet;

impl<F> PhotoStore for MemoryStorage<F> {
    async fn store_photo(
        &self,
        photo: &JpegPhoto,
        thumbnail: Option<&[u8]>,
        now: WallTime,
    ) -> Result<bool, StorageFault> {
        self.with_blobs(|photos| {
            let new = !photos.contains_key(&photo.id().0[..]);
            let (_, card) = photos.entry(photo.id().0.to_vec()).or_insert_with(|| (photo.bytes().to_vec(), Vec::new()));
            let before = card_of(card);
            let thumbnail = thumbnail.map_or(before.thumbnail, <[u8]>::to_vec);
            *card = StoredPhotoInfo { stored_at: now, thumbnail }.to_bytes();
            new
        })
    }

    async fn store_thumbnail(&self, photo: PhotoId, thumbnail: &[u8]) -> Result<(), StorageFault> {
        self.with_blobs(|photos| {
            if let Some((_, card)) = photos.get_mut(&photo.0[..]) {
                *card = StoredPhotoInfo { thumbnail: thumbnail.to_vec(), ..card_of(card) }.to_bytes();
            }
        })
    }

    async fn photo(&self, photo: PhotoId) -> Result<Option<Vec<u8>>, StorageFault> {
        self.with_blobs(|photos| photos.get(&photo.0[..]).map(|(bytes, _)| bytes.clone()))
    }

    async fn thumbnail(&self, photo: PhotoId) -> Result<Option<Vec<u8>>, StorageFault> {
        self.with_blobs(|photos| {
            photos.get(&photo.0[..]).map(|(_, card)| card_of(card).thumbnail).filter(|thumbnail| !thumbnail.is_empty())
        })
    }

    async fn photos(&self) -> Result<BTreeSet<PhotoId>, StorageFault> {
        self.with_blobs(|photos| photos.keys().filter_map(|id| id.as_slice().try_into().ok().map(PhotoId)).collect())
    }

    async fn delete_photos(&self, forgotten: &[PhotoId], before: WallTime) -> Result<u32, StorageFault> {
        self.with_blobs(|photos| {
            let stored = photos.len();
            photos.retain(|id, (_, card)| {
                !(forgotten.iter().any(|photo| photo.0[..] == id[..]) && card_of(card).stored_at < before)
            });
            (stored - photos.len()) as u32
        })
    }
}

fn card_of(bytes: &[u8]) -> StoredPhotoInfo {
    StoredPhotoInfo::from_bytes(bytes).unwrap_or(StoredPhotoInfo { stored_at: WallTime::EPOCH, thumbnail: Vec::new() })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::facts::Fact;
    use crate::time::wall;

    fn fresh() -> MemoryStorage<Fact> {
        let next = std::cell::Cell::new(0);
        MemoryStorage::new(move || {
            next.set(next.get() + 1);
            uuid::Uuid::from_u128(next.get())
        })
    }

    crate::photo_contract!(fresh(), |run| pollster::block_on(run));

    #[test]
    fn a_full_disk_stores_no_partial_photo() {
        use crate::photo::contract::photo;
        let storage = fresh();
        pollster::block_on(async {
            storage.fail_next(StorageFault::Full);
            assert_eq!(storage.store_photo(&photo(1), Some(&[1]), wall(5)).await, Err(StorageFault::Full));
            assert!(storage.photos().await.unwrap().is_empty());
            assert!(storage.store_photo(&photo(1), Some(&[1]), wall(5)).await.unwrap());
        });
    }
}
