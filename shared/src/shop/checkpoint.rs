//! The folded shop as bytes, so that opening the app does not fold years of work again.
//!
//! Schema: [`VERSION`]; the digits of [`FOLD_SHA256`]; the [`checksum`] of the rest, lowest byte first; the [`Shop`] in
//! postcard, with its tables as [`Table`](crate::collections::Table) says. A checkpoint is a cache: with another version,
//! another hash or damaged bytes it is discarded and the journal folded again. So whatever changes the bytes that the
//! frozen facts fold to makes older checkpoints stale by itself.
//!
//! The rows of its tables are not decoded when it is opened, so damage in them would not be noticed then but for the
//! checksum.

use super::Shop;
use crate::codec::{from_bytes, to_bytes};
use crate::facts::frozen::FOLD_SHA256;
use crate::journal::Checkpoint;

/// Raised by hand only if the fold changes for facts in an order or with values that no frozen fact has.
const VERSION: u8 = 9;

impl Checkpoint {
    /// Encodes a shop.
    pub fn of(shop: &Shop) -> Self {
        let body = to_bytes(shop);
        Self { bytes: [&[VERSION], FOLD_SHA256.as_bytes(), &checksum(&body).to_le_bytes(), &body].concat() }
    }

    /// Decodes the shop; `None` if the bytes have another version or are damaged: then fold the journal
    /// again.
    pub fn shop(&self) -> Option<Shop> {
        let rest = self.bytes.strip_prefix(&[VERSION])?.strip_prefix(FOLD_SHA256.as_bytes())?;
        let (sum, body) = rest.split_first_chunk()?;
        (checksum(body) == u64::from_le_bytes(*sum)).then(|| from_bytes(body)).flatten()
    }
}

/// A sum that damaged bytes do not have: of any one word that differs never, of more of them with a chance of 2⁻⁶⁴.
///
/// Our own: each step is a bijection of the sum, as in the hash of the Rust compiler. The tables of a CRC alone would be
/// 16 kB of the first load.
fn checksum(bytes: &[u8]) -> u64 {
    let (words, rest) = bytes.as_chunks();
    let mut last = [0; 8];
    last[..rest.len()].copy_from_slice(rest);
    let step = |sum: u64, word: u64| (sum.rotate_left(5) ^ word).wrapping_mul(0x517c_c1b7_2722_0a95);
    let sum = words.iter().fold(bytes.len() as u64, |sum, word| step(sum, u64::from_le_bytes(*word)));
    step(sum, u64::from_le_bytes(last))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::facts::frozen::history;

    #[test]
    fn a_checkpoint_with_any_one_byte_damaged_or_missing_is_discarded() {
        let shop = Shop::fold(&crate::facts::Journal::of(history()).unwrap());
        let whole = Checkpoint::of(&shop);
        assert_eq!(whole.shop(), Some(shop));
        for place in 0..whole.bytes.len() {
            let mut damaged = whole.clone();
            damaged.bytes[place] ^= 1 << (place % 8);
            assert!(damaged.shop().is_none(), "byte {place}");
        }
        for length in 0..whole.bytes.len() {
            assert!(Checkpoint { bytes: whole.bytes[..length].to_vec() }.shop().is_none(), "{length} bytes");
        }
    }
}
