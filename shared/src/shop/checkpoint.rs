//! The folded shop as bytes, so that opening the app does not fold years of work again.
//!
//! Schema: one byte, the checkpoint's version; then the [`Shop`] in postcard. A checkpoint is a cache: with
//! another version or unreadable bytes it is discarded and the journal folded again. Raise [`VERSION`]
//! whenever anything inside [`Shop`] changes shape or meaning.

use super::Shop;
use crate::codec::Encode;
use crate::journal::Checkpoint;

/// The version written, and the only one read.
pub const VERSION: u8 = 7;

/// SHA-256 of the checkpoint that all frozen facts fold to. A test compares it: if the same facts fold to other
/// bytes, checkpoints of the last version are stale, and [`VERSION`] must be raised.
#[doc(hidden)]
pub const FOLD_SHA256: &str = "d38d769f200613f7dbc616970d63a50eee8924925f5f64b16cdda111cd51bea2";

impl Checkpoint {
    /// Encodes a shop.
    pub fn of(shop: &Shop) -> Self {
        let mut bytes = vec![VERSION];
        shop.encode(&mut bytes);
        Self { bytes }
    }

    /// Decodes the shop; `None` if the bytes have another version or are damaged: then fold the journal
    /// again.
    pub fn shop(&self) -> Option<Shop> {
        let (&version, rest) = self.bytes.split_first()?;
        if version == VERSION { crate::codec::from_bytes(rest) } else { None }
    }
}
