//! What can happen to a photo. **Frozen** as [`crate::facts::Fact`] is.

use crate::codec::Encode;
use crate::ids::PhotoId;
use serde::{Deserialize, Serialize};

/// A fact about a photo; the subject is what the photo shows: a failure, a screen, a test, a batch.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum PhotoFact {
    /// A photo of the subject was taken.
    Taken {
        /// The photo's id.
        photo: PhotoId,
        /// Width in pixels.
        width: u16,
        /// Height in pixels.
        height: u16,
        /// Size of the file in bytes.
        bytes: u32,
    },
    /// The photo no longer shows the subject. Its bytes are deleted once it shows no other subject.
    Dropped(PhotoId),
}

impl PhotoFact {
    /// Whether every value is within its limits; see [`crate::journal::JournalFact::in_bounds`].
    pub(crate) fn in_bounds(&self) -> bool {
        match self {
            Self::Taken { width, height, bytes, .. } => {
                let side = 1..=MAX_ACCEPTED_SIDE;
                side.contains(width) && side.contains(height) && (1..=MAX_ACCEPTED_BYTES as u32).contains(bytes)
            }
            Self::Dropped(_) => true,
        }
    }
}
/// Longest side accepted from a file, in pixels: the browser needs at most 64 MB to decode it.
pub const MAX_ACCEPTED_SIDE: u16 = 4096;
/// Largest photo accepted from a file, in bytes.
pub const MAX_ACCEPTED_BYTES: usize = 1024 * 1024;

#[cfg(test)]
mod tests {
    use super::*;
    use crate::facts::Fact;
    use crate::journal::JournalFact;

    /// Lines like these are in users' backup files.
    #[test]
    fn the_json_lines_of_photo_facts_are_frozen() {
        let id = PhotoId([0xab; 32]);
        let hex = "ab".repeat(32);
        let taken = PhotoFact::Taken { photo: id, width: 1600, height: 1200, bytes: 280_000 };
        for (fact, line) in [
            (
                taken,
                format!(r#"{{"photo":{{"taken":{{"photo":"{hex}","width":1600,"height":1200,"bytes":280000}}}}}}"#),
            ),
            (PhotoFact::Dropped(id), format!(r#"{{"photo":{{"dropped":"{hex}"}}}}"#)),
        ] {
            let fact = Fact::Photo(fact);
            assert_eq!(fact.to_json().get(), line);
            assert_eq!(Fact::from_json(&line), Some(fact));
        }
    }

    /// Bytes like these are stored on users' devices.
    #[test]
    fn the_packed_bytes_of_photo_facts_are_frozen() {
        let taken = PhotoFact::Taken { photo: PhotoId([0xab; 32]), width: 1600, height: 1200, bytes: 280_000 };
        let frozen = [&[0], &[0xab; 32][..], &[0xc0, 0x0c, 0xb0, 0x09, 0xc0, 0x8b, 0x11]].concat();
        assert_eq!(postcard::to_allocvec(&taken).unwrap(), frozen);
        assert_eq!(postcard::from_bytes::<PhotoFact>(&frozen).unwrap(), taken);
        let dropped = [&[1], &[0xab; 32][..]].concat();
        assert_eq!(postcard::to_allocvec(&PhotoFact::Dropped(PhotoId([0xab; 32]))).unwrap(), dropped);
    }

    #[test]
    fn pixels_and_bytes_that_no_device_makes_are_out_of_bounds() {
        let taken =
            |width, height, bytes| PhotoFact::Taken { photo: PhotoId([0; 32]), width, height, bytes }.in_bounds();
        assert!(taken(1600, 1200, 300_000));
        for (width, height, bytes) in [(0, 9, 9), (9, 0, 9), (9, 9, 0), (4097, 9, 9), (9, 4097, 9), (9, 9, u32::MAX)] {
            assert!(!taken(width, height, bytes), "{width} {height} {bytes}");
        }
    }
}
