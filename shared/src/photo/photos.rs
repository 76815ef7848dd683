//! Photos as the facts leave them.

use super::{PhotoFact, PhotoId};
use crate::journal::Subject;
use crate::pack::Pack;
use crate::table::Table;
use serde::{Deserialize, Serialize};

/// A photo of something.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, Pack)]
pub struct Photo {
    /// Which.
    pub id: PhotoId,
    /// Width in pixels.
    pub width: u16,
    /// Height in pixels.
    pub height: u16,
    /// Bytes.
    pub bytes: u32,
    /// Wall time.
    pub at: u64,
}

/// All photos, by what they show, in the order taken.
#[derive(Clone, Debug, PartialEq, Default, Pack)]
pub struct Photos {
    of: Table<Vec<Photo>>,
}

impl Photos {
    /// The photos of something, in the order taken.
    pub fn of(&self, subject: Subject) -> &[Photo] {
        self.of.get(&subject).map_or(&[], Vec::as_slice)
    }

    pub(crate) fn take(&mut self, subject: Subject, at: u64, fact: &PhotoFact) {
        let photos = self.of.or_default(subject);
        match fact {
            PhotoFact::Taken { photo, width, height, bytes } => {
                photos.retain(|kept| kept.id != *photo);
                photos.push(Photo { id: *photo, width: *width, height: *height, bytes: *bytes, at });
            }
            PhotoFact::Dropped(photo) => photos.retain(|kept| kept.id != *photo),
        }
    }
}
