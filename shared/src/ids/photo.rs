//! The id of a photo: the SHA-256 hash of its bytes (FIPS 180-4).

use crate::codec::Encode;
use serde::de::Error;
use serde::{Deserialize, Deserializer, Serialize, Serializer};
use sha2::{Digest, Sha256};
use std::fmt;

/// The SHA-256 hash of a photo's bytes. **Frozen**: 64 lower-case hexadecimal digits in JSON and in file
/// names, 32 raw bytes in packed form.
///
/// ```
/// use lastpull_core::ids::PhotoId;
///
/// let id = PhotoId::of(b"abc");
/// let hex = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
/// assert_eq!(id.to_string(), hex);
/// assert_eq!(PhotoId::parse(hex), Some(id));
/// assert_eq!(PhotoId::parse(&hex.to_uppercase()), None);
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Encode)]
pub struct PhotoId(pub [u8; 32]);

impl PhotoId {
    /// The id of a photo with these bytes.
    pub fn of(bytes: &[u8]) -> Self {
        Self(Sha256::digest(bytes).into())
    }

    /// Parses an id in hexadecimal; `None` unless the text is exactly what [`fmt::Display`] writes.
    pub fn parse(text: &str) -> Option<Self> {
        let digit = |byte: u8| match byte {
            b'0'..=b'9' => Some(byte - b'0'),
            b'a'..=b'f' => Some(byte - b'a' + 10),
            _ => None,
        };
        if text.len() != 64 {
            return None;
        }
        let mut id = [0; 32];
        for (byte, pair) in id.iter_mut().zip(text.as_bytes().chunks_exact(2)) {
            *byte = digit(pair[0])? << 4 | digit(pair[1])?;
        }
        Some(Self(id))
    }
}

impl fmt::Display for PhotoId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.iter().try_for_each(|byte| write!(f, "{byte:02x}"))
    }
}

impl Serialize for PhotoId {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        if serializer.is_human_readable() { serializer.collect_str(self) } else { self.0.serialize(serializer) }
    }
}

impl<'de> Deserialize<'de> for PhotoId {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        if deserializer.is_human_readable() {
            Self::parse(&String::deserialize(deserializer)?).ok_or_else(|| D::Error::custom("no id of a photo"))
        } else {
            <[u8; 32]>::deserialize(deserializer).map(Self)
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// "abc", the one-block example of NIST's "SHA-256 example values" to FIPS 180-4.
    const ABC: &str = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";

    #[test]
    fn the_example_of_the_standard_is_reproduced() {
        assert_eq!(PhotoId::of(b"abc").to_string(), ABC);
    }

    /// Ids in these forms are in files and in databases.
    #[test]
    fn the_text_and_packed_forms_of_an_id_are_frozen() {
        let id = PhotoId::of(b"abc");
        assert_eq!(serde_json::to_string(&id).unwrap(), format!("\"{ABC}\""));
        assert_eq!(serde_json::from_str::<PhotoId>(&format!("\"{ABC}\"")).unwrap(), id);
        let packed = postcard::to_allocvec(&id).unwrap();
        assert_eq!(packed, id.0);
        assert_eq!(packed[..4], [0xba, 0x78, 0x16, 0xbf]);
        assert_eq!(postcard::from_bytes::<PhotoId>(&packed).unwrap(), id);
    }

    #[test]
    fn only_lower_case_hexadecimal_is_an_id() {
        let twice = format!("{ABC}{ABC}");
        for text in ["", &ABC[1..], &ABC.to_uppercase(), &twice, &ABC.replace('f', "g"), &"é".repeat(32)] {
            assert_eq!(PhotoId::parse(text), None, "{text}");
        }
    }
}
