//! Photos: stored before the fact that names them, shown, deleted, and their bytes removed a day after
//! nothing shows them any more.

use super::Store;
use crate::platform::pictures::PictureProblem;
use crate::platform::{clock, pictures, spawn_local, storage_persistence};
use lastpull_core::facts::Fact;
use lastpull_core::ids::PhotoId;
use lastpull_core::ids::Subject;
use lastpull_core::journal::StorageFault;
use lastpull_core::photo::{MAX_MADE_BYTES, Photo, PhotoFact, PhotoStore, photos_fit, photos_that_fit};
use leptos::prelude::*;
use std::time::Duration;
use web_sys::File;

/// Progress of adding photos.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct PhotoProgress {
    /// Number of files processed, added or refused.
    pub done: u32,
    /// Number of files in all; 0 if none is in progress.
    pub of: u32,
    /// Files that were refused: the name and the reason.
    pub refused: Vec<(String, PhotoError)>,
}

/// Why a photo was not added.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum PhotoError {
    /// No photo could be made from the file.
    Picture(PictureProblem),
    /// The device has too little space left.
    NoRoom,
    /// It could not be stored.
    Storage(StorageFault),
}

/// Where a photo's bytes are.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum PhotoSource {
    /// At this object URL.
    Url(String),
    /// Not on this device.
    Missing,
    /// They could not be read.
    Fault(StorageFault),
}

/// Whether the browser has space for this many more bytes; true if it does not say.
pub(super) async fn has_room(bytes: f64) -> bool {
    storage_persistence::space().await.is_none_or(|space| photos_fit(bytes, space.used, space.quota))
}

impl Store {
    /// How many more photos the device has space for, as far as the browser says.
    pub fn photos_that_fit(self) -> Option<u32> {
        self.persistence.with(|persistence| persistence.space.map(|space| photos_that_fit(space.used, space.quota)))
    }

    /// Adds pictures to a subject, one after the other; a refused one is reported and the others are kept.
    pub fn add_photos(self, subject: Subject, files: Vec<File>, progress: RwSignal<PhotoProgress>) {
        if files.is_empty() {
            return;
        }
        progress.update(|progress| {
            if progress.of == 0 {
                progress.refused.clear();
            }
            progress.of += files.len() as u32;
        });
        spawn_local(async move {
            for file in files {
                // Lets the page show the progress.
                clock::wait(Duration::from_millis(1)).await;
                let refused = self.add_photo(subject, &file).await.err();
                progress.update(|progress| {
                    progress.done += 1;
                    progress.refused.extend(refused.map(|why| (file.name(), why)));
                });
            }
            progress.update(|progress| {
                if progress.done == progress.of {
                    (progress.done, progress.of) = (0, 0);
                }
            });
            self.refresh_persistence();
        });
    }

    /// Adds one picture to a subject.
    ///
    /// # Errors
    /// [`PhotoError`] if no photo could be made from the file, or it could not be stored.
    pub async fn add_photo(self, subject: Subject, file: &File) -> Result<(), PhotoError> {
        if !has_room(MAX_MADE_BYTES as f64).await {
            return Err(PhotoError::NoRoom);
        }
        let storage = self.storage.get_value();
        let picture = pictures::picture_of(file).await.map_err(PhotoError::Picture)?;
        let kept = storage.store_photo(&picture.photo, Some(&picture.small), clock::now().now).await;
        kept.map_err(
            |fault| if fault == StorageFault::Full { PhotoError::NoRoom } else { PhotoError::Storage(fault) },
        )?;
        // Its bytes are stored: now a fact may name it.
        self.record_and_wait(vec![(subject, Fact::Photo(PhotoFact::taken(&picture.photo)))]).await;
        Ok(())
    }

    /// Deletes a photo of a subject, with undo.
    pub fn delete_photo(self, subject: Subject, photo: &Photo, notice: &str) {
        self.record(subject, Fact::Photo(PhotoFact::Dropped(photo.id)));
        self.notify_with_undo(notice, vec![(subject, Fact::Photo(PhotoFact::from(photo)))]);
    }

    /// The object URL of a photo. The caller must revoke it.
    pub async fn photo_url(self, photo: PhotoId) -> PhotoSource {
        match self.storage.get_value().photo(photo).await {
            Ok(Some(bytes)) => pictures::address_of(&bytes).map_or(PhotoSource::Missing, PhotoSource::Url),
            Ok(None) => PhotoSource::Missing,
            Err(fault) => PhotoSource::Fault(fault),
        }
    }

    /// The object URL of a photo's thumbnail, which is made if there is none. The caller must revoke it.
    pub async fn thumbnail_url(self, photo: PhotoId) -> PhotoSource {
        let storage = self.storage.get_value();
        match storage.thumbnail(photo).await {
            Ok(Some(small)) => return pictures::address_of(&small).map_or(PhotoSource::Missing, PhotoSource::Url),
            Ok(None) => {}
            Err(fault) => return PhotoSource::Fault(fault),
        }
        let bytes = match storage.photo(photo).await {
            Ok(Some(bytes)) => bytes,
            Ok(None) => return PhotoSource::Missing,
            Err(fault) => return PhotoSource::Fault(fault),
        };
        let Some(small) = pictures::thumbnail_of(&bytes).await else { return PhotoSource::Missing };
        // Only to be quicker next time.
        let _ = storage.store_thumbnail(photo, &small).await;
        pictures::address_of(&small).map_or(PhotoSource::Missing, PhotoSource::Url)
    }
}
