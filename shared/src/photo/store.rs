//! The contract of every store for the bytes of photos.

use super::JpegPhoto;
use crate::ids::PhotoId;
use crate::journal::StorageFault;
use crate::time::WallTime;
use std::collections::BTreeSet;

/// Stores the bytes of photos under their hash.
///
/// As with [`crate::journal::Storage`], every method is one transaction: it happens wholly and durably
/// before its future resolves to `Ok`, or not at all; one that is dropped midway leaves nothing behind.
/// Several handles may work on one store at once, and each sees what any has committed. Photos never
/// change: two that keep the same one do no harm to each other.
///
/// A photo is stored **before** the fact that names it is recorded, so that no device names a photo whose
/// bytes it never had. A photo that no fact names afterwards is deleted once it has been stored for
/// [`super::Photos::GRACE`].
///
/// [`crate::journal::Storage::erase`] of the same store forgets the photos too.
#[allow(async_fn_in_trait)]
pub trait PhotoStore {
    /// Stores a photo at wall time `now`, with a thumbnail if there is one. Returns whether its bytes are
    /// new here. Storing it again only updates its time.
    async fn store_photo(
        &self,
        photo: &JpegPhoto,
        thumbnail: Option<&[u8]>,
        now: WallTime,
    ) -> Result<bool, StorageFault>;

    /// Adds the thumbnail of a photo that was stored without one. Does nothing if the photo is not here.
    async fn store_thumbnail(&self, photo: PhotoId, thumbnail: &[u8]) -> Result<(), StorageFault>;

    /// The bytes of a photo; `None` if it is not here.
    async fn photo(&self, photo: PhotoId) -> Result<Option<Vec<u8>>, StorageFault>;

    /// The thumbnail of a photo; `None` if there is none.
    async fn thumbnail(&self, photo: PhotoId) -> Result<Option<Vec<u8>>, StorageFault>;

    /// The ids of the photos that are here.
    async fn photos(&self) -> Result<BTreeSet<PhotoId>, StorageFault>;

    /// Deletes those of `photos` that were last stored before wall time `before`, and returns their number.
    async fn delete_photos(&self, photos: &[PhotoId], before: WallTime) -> Result<u32, StorageFault>;
}

/// When a photo was last stored, and its thumbnail. Schema, version 1: one byte `1`; the wall time in
/// milliseconds as eight bytes, least significant first; then the thumbnail, empty if there is none.
/// **Frozen**.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct StoredPhotoInfo {
    /// When it was last stored, as wall time.
    pub stored_at: WallTime,
    /// The thumbnail as JPEG; empty if there is none.
    pub thumbnail: Vec<u8>,
}

impl StoredPhotoInfo {
    /// The version that is written.
    pub const VERSION: u8 = 1;

    /// The stored form.
    pub fn to_bytes(&self) -> Vec<u8> {
        [&[Self::VERSION], &self.stored_at.unix_ms().to_le_bytes()[..], &self.thumbnail].concat()
    }

    /// Reads the stored form; `None` if it cannot be read. The photo then counts as new and without a
    /// thumbnail, which loses nothing.
    pub fn from_bytes(bytes: &[u8]) -> Option<Self> {
        let (&version, rest) = bytes.split_first()?;
        let (stored_at, thumbnail) = rest.split_first_chunk::<8>()?;
        (version == Self::VERSION).then(|| Self {
            stored_at: WallTime::from_unix_ms(u64::from_le_bytes(*stored_at)),
            thumbnail: thumbnail.to_vec(),
        })
    }
}

/// The version byte before a stored photo's JPEG. **Frozen**.
pub const STORED_VERSION: u8 = 1;

#[cfg(test)]
mod tests {
    use super::*;
    use crate::time::wall;

    /// Bytes like these are stored on users' devices.
    #[test]
    fn the_bytes_of_a_card_of_version_1_are_frozen() {
        let card = StoredPhotoInfo { stored_at: wall(0x0102_0304), thumbnail: vec![9, 8] };
        let frozen: &[u8] = &[1, 4, 3, 2, 1, 0, 0, 0, 0, 9, 8];
        assert_eq!(card.to_bytes(), frozen);
        assert_eq!(StoredPhotoInfo::from_bytes(frozen), Some(card));
        assert_eq!(StoredPhotoInfo::from_bytes(&frozen[..8]), None);
        assert_eq!(StoredPhotoInfo::from_bytes(&[2; 11]), None);
        assert_eq!(StoredPhotoInfo::from_bytes(&[]), None);
    }
}
