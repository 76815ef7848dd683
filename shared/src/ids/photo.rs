//! The id of a photo: the SHA-256 hash of its bytes (FIPS 180-4, section 6.2).
//!
//! Computed here because the browser offers it on HTTPS pages only; the tests check it against the `sha2`
//! crate.

use crate::codec::Encode;
use serde::de::Error;
use serde::{Deserialize, Deserializer, Serialize, Serializer};
use std::fmt;

/// The SHA-256 hash of a photo's bytes. **Frozen**: 64 lower-case hexadecimal digits in JSON and in file
/// names, 32 raw bytes in packed form.
///
/// ```
/// use lastpull_core::photo::PhotoId;
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
        let mut state = START;
        let mut blocks = bytes.chunks_exact(64);
        blocks.by_ref().for_each(|block| mix(&mut state, block));
        // Padding: the remaining bytes, a one bit, zeros, and the length in bits.
        let mut last = blocks.remainder().to_vec();
        last.push(0x80);
        last.resize(if last.len() > 56 { 120 } else { 56 }, 0);
        last.extend((bytes.len() as u64 * 8).to_be_bytes());
        last.chunks_exact(64).for_each(|block| mix(&mut state, block));
        let mut id = [0; 32];
        for (four, word) in id.chunks_exact_mut(4).zip(state) {
            four.copy_from_slice(&word.to_be_bytes());
        }
        Self(id)
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

const START: [u32; 8] =
    [0x6a09_e667, 0xbb67_ae85, 0x3c6e_f372, 0xa54f_f53a, 0x510e_527f, 0x9b05_688c, 0x1f83_d9ab, 0x5be0_cd19];

#[rustfmt::skip]
const ROUNDS: [u32; 64] = [
    0x428a_2f98, 0x7137_4491, 0xb5c0_fbcf, 0xe9b5_dba5, 0x3956_c25b, 0x59f1_11f1, 0x923f_82a4, 0xab1c_5ed5,
    0xd807_aa98, 0x1283_5b01, 0x2431_85be, 0x550c_7dc3, 0x72be_5d74, 0x80de_b1fe, 0x9bdc_06a7, 0xc19b_f174,
    0xe49b_69c1, 0xefbe_4786, 0x0fc1_9dc6, 0x240c_a1cc, 0x2de9_2c6f, 0x4a74_84aa, 0x5cb0_a9dc, 0x76f9_88da,
    0x983e_5152, 0xa831_c66d, 0xb003_27c8, 0xbf59_7fc7, 0xc6e0_0bf3, 0xd5a7_9147, 0x06ca_6351, 0x1429_2967,
    0x27b7_0a85, 0x2e1b_2138, 0x4d2c_6dfc, 0x5338_0d13, 0x650a_7354, 0x766a_0abb, 0x81c2_c92e, 0x9272_2c85,
    0xa2bf_e8a1, 0xa81a_664b, 0xc24b_8b70, 0xc76c_51a3, 0xd192_e819, 0xd699_0624, 0xf40e_3585, 0x106a_a070,
    0x19a4_c116, 0x1e37_6c08, 0x2748_774c, 0x34b0_bcb5, 0x391c_0cb3, 0x4ed8_aa4a, 0x5b9c_ca4f, 0x682e_6ff3,
    0x748f_82ee, 0x78a5_636f, 0x84c8_7814, 0x8cc7_0208, 0x90be_fffa, 0xa450_6ceb, 0xbef9_a3f7, 0xc671_78f2,
];

/// Mixes one block of 64 bytes into the state, with the variable names of the standard.
#[allow(clippy::many_single_char_names)]
fn mix(state: &mut [u32; 8], block: &[u8]) {
    let mut words = [0u32; 64];
    for (word, four) in words.iter_mut().zip(block.chunks_exact(4)) {
        *word = u32::from_be_bytes([four[0], four[1], four[2], four[3]]);
    }
    for at in 16..64 {
        let (early, late) = (words[at - 15], words[at - 2]);
        let early = early.rotate_right(7) ^ early.rotate_right(18) ^ (early >> 3);
        let late = late.rotate_right(17) ^ late.rotate_right(19) ^ (late >> 10);
        words[at] = words[at - 16].wrapping_add(early).wrapping_add(words[at - 7]).wrapping_add(late);
    }
    let mut now = *state;
    for (word, round) in words.iter().zip(ROUNDS) {
        let [a, b, c, d, e, f, g, h] = now;
        let choice = (e & f) ^ (!e & g);
        let majority = (a & b) ^ (a & c) ^ (b & c);
        let one = (e.rotate_right(6) ^ e.rotate_right(11) ^ e.rotate_right(25))
            .wrapping_add(h)
            .wrapping_add(choice)
            .wrapping_add(round)
            .wrapping_add(*word);
        let two = (a.rotate_right(2) ^ a.rotate_right(13) ^ a.rotate_right(22)).wrapping_add(majority);
        now = [one.wrapping_add(two), a, b, c, d.wrapping_add(one), e, f, g];
    }
    for (word, more) in state.iter_mut().zip(now) {
        *word = word.wrapping_add(more);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;
    use sha2::{Digest, Sha256};

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

    proptest! {
        #[test]
        fn the_hash_agrees_with_the_sha2_crate(bytes in prop::collection::vec(any::<u8>(), 0..300)) {
            let (id, theirs) = (PhotoId::of(&bytes), Sha256::digest(&bytes));
            prop_assert_eq!(id.0.as_slice(), theirs.as_slice());
            prop_assert_eq!(PhotoId::parse(&id.to_string()), Some(id));
        }
    }
}
