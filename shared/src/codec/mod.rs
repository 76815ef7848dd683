//! Binary codec of stored values.
//!
//! The format is postcard (wire format specification, version 1): numbers as varints, signed ones in zigzag,
//! lists and strings behind their length, an enum behind its variant's index. The tests check it against the
//! `postcard` crate.
//!
//! The app does not use serde for stored bytes: its code for every type, with an error path at every field, was a fifth
//! of the bundle. Decoding here never returns early: once the bytes are invalid, the [`Reader`] has failed and yields
//! only zeros and empty lists, and the caller discards the value.

mod containers;
mod reader;
mod scalars;

pub use lastpull_macros::Encode;
pub use reader::Reader;

/// A value with a binary encoding.
pub trait Encode {
    /// Appends the encoded bytes.
    fn encode(&self, out: &mut Vec<u8>);

    /// Decodes a value. The result is meaningless if the reader has failed.
    fn decode(from: &mut Reader<'_>) -> Self;

    /// Whether it holds a variant that was added after version 1.0, which that version does not read.
    fn is_new(&self) -> bool {
        false
    }
}

/// Encodes a value.
pub fn to_bytes<T: Encode>(value: &T) -> Vec<u8> {
    let mut out = Vec::new();
    value.encode(&mut out);
    out
}

/// Decodes a value; `None` if the bytes are invalid or some are left over.
pub fn from_bytes<T: Encode>(bytes: &[u8]) -> Option<T> {
    let mut reader = Reader::of(bytes);
    let value = T::decode(&mut reader);
    reader.finish(value)
}

/// Appends a number as a varint: seven bits per byte, the lowest first.
pub fn encode_number(mut number: u64, out: &mut Vec<u8>) {
    while number >= 0x80 {
        out.push(number as u8 | 0x80);
        number >>= 7;
    }
    out.push(number as u8);
}

#[cfg(test)]
mod tests;
