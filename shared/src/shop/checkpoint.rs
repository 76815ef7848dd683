//! The folded shop as bytes, so that opening the app does not fold years of work again.
//!
//! Schema: [`VERSION`]; the digits of [`FOLD_SHA256`]; then the [`Shop`] in postcard. A checkpoint is a cache: with
//! another version, another hash or unreadable bytes it is discarded and the journal folded again. So whatever changes
//! the bytes that the frozen facts fold to makes older checkpoints stale by itself.

use super::Shop;
use crate::codec::{from_bytes, to_bytes};
use crate::facts::frozen::FOLD_SHA256;
use crate::journal::Checkpoint;

/// Raised by hand only if the fold changes for facts in an order or with values that no frozen fact has.
const VERSION: u8 = 7;

impl Checkpoint {
    /// Encodes a shop.
    pub fn of(shop: &Shop) -> Self {
        Self { bytes: [&[VERSION], FOLD_SHA256.as_bytes(), &to_bytes(shop)].concat() }
    }

    /// Decodes the shop; `None` if the bytes have another version or are damaged: then fold the journal
    /// again.
    pub fn shop(&self) -> Option<Shop> {
        from_bytes(self.bytes.strip_prefix(&[VERSION])?.strip_prefix(FOLD_SHA256.as_bytes())?)
    }
}
