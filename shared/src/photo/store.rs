//! The promise that every place to keep photos makes, beside that of the journal.

use super::JpegPhoto;
use crate::ids::PhotoId;
use crate::journal::StorageFault;
use std::collections::BTreeSet;

/// Where the bytes of photos are kept, by their hash.
///
/// As with [`crate::journal::Storage`], every method is one transaction: it happens wholly and durably
/// before its future resolves to `Ok`, or not at all; one that is dropped midway leaves nothing behind.
/// Several handles may work on one store at once, and each sees what any has committed. Photos never
/// change: two that keep the same one do no harm to each other.
///
/// A photo is kept **before** the fact that names it is recorded, so that a device never names a photo
/// whose bytes it did not have. What then never comes to be named is forgotten once it has been here
/// for [`super::Photos::GRACE`].
///
/// [`crate::journal::Storage::erase`] of the same store forgets the photos too.
#[allow(async_fn_in_trait)]
pub trait PhotoStore {
    /// Keeps a photo, with a small picture of it where there is one, as of wall time `now`. Says
    /// whether its bytes were not here before. Keeping it again only moves its time.
    async fn keep_photo(&self, photo: &JpegPhoto, small: Option<&[u8]>, now: u64) -> Result<bool, StorageFault>;

    /// Adds the small picture of a photo that came without. Nothing happens when the photo is not here.
    async fn keep_small(&self, photo: PhotoId, small: &[u8]) -> Result<(), StorageFault>;

    /// The bytes of a photo; none when it is not here.
    async fn photo(&self, photo: PhotoId) -> Result<Option<Vec<u8>>, StorageFault>;

    /// The small picture of a photo; none when there is none.
    async fn small(&self, photo: PhotoId) -> Result<Option<Vec<u8>>, StorageFault>;

    /// Which photos are here.
    async fn photos(&self) -> Result<BTreeSet<PhotoId>, StorageFault>;

    /// Forgets those of these photos that were last kept before wall time `before`, and says how many
    /// that were.
    async fn forget_photos(&self, photos: &[PhotoId], before: u64) -> Result<u32, StorageFault>;
}

/// When a photo was last kept, and its small picture. Schema, version 1: one byte `1`; the wall time in
/// milliseconds as eight bytes, lowest first; then the small picture, empty while there is none.
/// **Frozen**.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Card {
    /// Wall time.
    pub kept: u64,
    /// JPEG.
    pub small: Vec<u8>,
}

impl Card {
    /// The version that is written.
    pub const VERSION: u8 = 1;

    /// The stored bytes.
    pub fn to_bytes(&self) -> Vec<u8> {
        [&[Self::VERSION], &self.kept.to_le_bytes()[..], &self.small].concat()
    }

    /// The card of stored bytes. One that does not read counts as new and without a picture: that
    /// loses nothing.
    pub fn from_bytes(bytes: &[u8]) -> Option<Self> {
        let (&version, rest) = bytes.split_first()?;
        let (kept, small) = rest.split_first_chunk::<8>()?;
        (version == Self::VERSION).then(|| Self { kept: u64::from_le_bytes(*kept), small: small.to_vec() })
    }
}

/// The version byte before a photo's JPEG as it is stored. **Frozen**.
pub const STORED_VERSION: u8 = 1;

#[cfg(test)]
mod tests {
    use super::*;

    /// These bytes are on people's phones.
    #[test]
    fn the_bytes_of_a_card_of_version_1_are_frozen() {
        let card = Card { kept: 0x0102_0304, small: vec![9, 8] };
        let frozen: &[u8] = &[1, 4, 3, 2, 1, 0, 0, 0, 0, 9, 8];
        assert_eq!(card.to_bytes(), frozen);
        assert_eq!(Card::from_bytes(frozen), Some(card));
        assert_eq!(Card::from_bytes(&frozen[..8]), None);
        assert_eq!(Card::from_bytes(&[2; 11]), None);
        assert_eq!(Card::from_bytes(&[]), None);
    }
}
