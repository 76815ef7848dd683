//! What can happen to a photo. **Frozen** as [`crate::journal::Fact`] is.

use crate::pack::Pack;
use serde::{Deserialize, Serialize};

/// The SHA-256 of a photo's bytes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, Pack)]
#[serde(transparent)]
pub struct PhotoId(pub [u8; 32]);

/// Something about a photo; the subject is what it shows: a failure, a screen, a test, a batch.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Pack)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum PhotoFact {
    /// A photo of the subject was taken.
    Taken {
        /// Which.
        photo: PhotoId,
        /// Width in pixels.
        width: u16,
        /// Height in pixels.
        height: u16,
        /// Bytes.
        bytes: u32,
    },
    /// The photo shows the subject no more; where it shows nothing else its bytes go.
    Dropped(PhotoId),
}

impl PhotoFact {
    /// As [`crate::journal::Fact::in_bounds`].
    pub(crate) fn in_bounds(&self) -> bool {
        true
    }
}
