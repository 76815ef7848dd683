//! The photos in the database.

use super::database::IndexedDb;
use super::fault::fault;
use super::schema::{CARDS, PHOTO_STORES, PHOTOS};
use super::transaction::Work;
use lastpull_core::ids::PhotoId;
use lastpull_core::journal::StorageFault;
use lastpull_core::photo::{JpegPhoto, PhotoStore, STORED_VERSION, StoredPhotoInfo};
use lastpull_core::time::WallTime;
use std::collections::BTreeSet;
use wasm_bindgen::JsValue;

impl PhotoStore for IndexedDb {
    async fn store_photo(
        &self,
        photo: &JpegPhoto,
        thumbnail: Option<&[u8]>,
        now: WallTime,
    ) -> Result<bool, StorageFault> {
        let key = photo.id().to_string();
        // Assembled before the transaction begins.
        let bytes = [&[STORED_VERSION], photo.bytes()].concat();
        let steps = async |work: &Work| {
            let new = work.get_key(PHOTOS, &key).await?.is_none();
            let before = work.get(CARDS, &key).await?.and_then(|card| StoredPhotoInfo::from_bytes(&card));
            let thumbnail = thumbnail.map(<[u8]>::to_vec).or(before.map(|card| card.thumbnail)).unwrap_or_default();
            if new {
                work.put(PHOTOS, &key.as_str().into(), &bytes)?;
            }
            work.put(CARDS, &key.as_str().into(), &StoredPhotoInfo { stored_at: now, thumbnail }.to_bytes())?;
            Ok(new)
        };
        self.work(PHOTO_STORES, "readwrite", steps).await
    }

    async fn store_thumbnail(&self, photo: PhotoId, thumbnail: &[u8]) -> Result<(), StorageFault> {
        let key = photo.to_string();
        let steps = async |work: &Work| {
            if let Some(card) = work.get(CARDS, &key).await?.and_then(|card| StoredPhotoInfo::from_bytes(&card)) {
                let card = StoredPhotoInfo { thumbnail: thumbnail.to_vec(), ..card };
                work.put(CARDS, &key.as_str().into(), &card.to_bytes())?;
            }
            Ok(())
        };
        self.work(PHOTO_STORES, "readwrite", steps).await
    }

    async fn photo(&self, photo: PhotoId) -> Result<Option<Vec<u8>>, StorageFault> {
        let key = photo.to_string();
        let steps = async |work: &Work| work.get(PHOTOS, &key).await;
        match self.work(PHOTO_STORES, "readonly", steps).await? {
            Some(mut bytes) if bytes.first() == Some(&STORED_VERSION) => Ok(Some(bytes.split_off(1))),
            Some(_) => Err(StorageFault::NewerVersion),
            None => Ok(None),
        }
    }

    async fn thumbnail(&self, photo: PhotoId) -> Result<Option<Vec<u8>>, StorageFault> {
        let key = photo.to_string();
        let steps = async |work: &Work| work.get(CARDS, &key).await;
        let card = self.work(PHOTO_STORES, "readonly", steps).await?;
        let small = card.and_then(|card| StoredPhotoInfo::from_bytes(&card)).map(|card| card.thumbnail);
        Ok(small.filter(|small| !small.is_empty()))
    }

    async fn photos(&self) -> Result<BTreeSet<PhotoId>, StorageFault> {
        let steps = async |work: &Work| {
            let keys = work.store(PHOTOS)?.get_all_keys(None, None).map_err(fault)?.await.map_err(fault)?;
            Ok(keys.iter().filter_map(|key| PhotoId::parse(&key.as_string()?)).collect())
        };
        self.work(PHOTO_STORES, "readonly", steps).await
    }

    async fn delete_photos(&self, photos: &[PhotoId], before: WallTime) -> Result<u32, StorageFault> {
        let keys: Vec<String> = photos.iter().map(PhotoId::to_string).collect();
        let steps = async |work: &Work| {
            let mut gone = 0;
            for key in &keys {
                let card = work.get(CARDS, key).await?;
                let late = card
                    .and_then(|card| StoredPhotoInfo::from_bytes(&card))
                    .is_some_and(|card| card.stored_at >= before);
                if !late && work.get_key(PHOTOS, key).await?.is_some() {
                    for store in PHOTO_STORES {
                        work.store(store)?.delete(JsValue::from_str(key)).map_err(fault)?;
                    }
                    gone += 1;
                }
            }
            Ok(gone)
        };
        self.work(PHOTO_STORES, "readwrite", steps).await
    }
}
