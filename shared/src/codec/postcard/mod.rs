//! Binary codec of stored values.
//!
//! The format is postcard (wire format specification, version 1): numbers as varints, signed ones in zigzag,
//! lists and strings behind their length, an enum behind its variant's index. The tests check it against the
//! `postcard` crate. The app does not use serde for stored bytes, because its code for every type, with an
//! error path at every field, was a fifth of the bundle.
//!
//! Decoding never returns early: once the bytes are invalid, the [`Reader`] has failed and yields only zeros
//! and empty lists, and the caller discards the value.

use std::collections::{BTreeMap, BTreeSet};
use uuid::Uuid;

pub use lastpull_macros::Encode;

/// A cursor over bytes to decode.
#[derive(Clone)]
pub struct Reader<'a> {
    rest: &'a [u8],
    failed: bool,
    newer: bool,
}

/// How far beyond the known variants the number of a newer version's variant may be.
const VARIANTS_AHEAD: u32 = 32;

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

impl<'a> Reader<'a> {
    /// A reader at the start of these bytes.
    pub fn of(bytes: &'a [u8]) -> Self {
        Self { rest: bytes, failed: false, newer: false }
    }

    /// Marks the reader as failed. Everything read from here on is meaningless.
    pub fn fail(&mut self) {
        self.failed = true;
        self.rest = &[];
    }

    /// Marks the reader as failed at the number of a variant, of an enum that has `known` ones. One that is a little
    /// beyond them was written by a newer version.
    pub fn fail_at_variant(&mut self, number: u32, known: u32) {
        self.newer |= !self.failed && (known..known + VARIANTS_AHEAD).contains(&number);
        self.fail();
    }

    /// Whether the reader failed at a variant of a newer version.
    pub fn is_newer(&self) -> bool {
        self.newer
    }

    /// Whether invalid bytes were read.
    pub fn has_failed(&self) -> bool {
        self.failed
    }

    /// Number of bytes left.
    pub fn left(&self) -> usize {
        self.rest.len()
    }

    /// Returns the value if no read failed and no bytes are left.
    pub fn finish<T>(self, value: T) -> Option<T> {
        (!self.failed && self.rest.is_empty()).then_some(value)
    }

    /// Reads the sixteen bytes of an id, without a length.
    pub fn id(&mut self) -> Uuid {
        self.bytes(16).first_chunk().map_or(Uuid::nil(), |bytes| Uuid::from_bytes(*bytes))
    }

    fn byte(&mut self) -> u8 {
        match self.rest.split_first() {
            Some((byte, rest)) => {
                self.rest = rest;
                *byte
            }
            None => {
                self.fail();
                0
            }
        }
    }

    /// Reads a varint. Fails if it is larger than `most`.
    pub fn number_below(&mut self, most: u64) -> u64 {
        let (mut number, mut shift) = (0u64, 0);
        loop {
            let byte = self.byte();
            let bits = u64::from(byte & 0x7f);
            number |= bits << shift;
            if byte & 0x80 == 0 {
                break;
            }
            shift += 7;
            // The tenth byte holds the one remaining bit.
            if shift == 63 {
                number |= match self.byte() {
                    last @ 0..=1 => u64::from(last) << shift,
                    _ => return self.no_number(),
                };
                break;
            }
        }
        if number > most { self.no_number() } else { number }
    }

    fn no_number(&mut self) -> u64 {
        self.fail();
        0
    }

    /// Reads a length. Fails if it is larger than the number of bytes left, since every element takes at
    /// least one.
    fn length(&mut self) -> usize {
        let most = self.rest.len() as u64;
        self.number_below(most) as usize
    }

    /// Reads this number of bytes.
    pub fn bytes(&mut self, length: usize) -> &'a [u8] {
        match self.rest.split_at_checked(length) {
            Some((bytes, rest)) => {
                self.rest = rest;
                bytes
            }
            None => {
                self.fail();
                &[]
            }
        }
    }
}

macro_rules! unsigned {
    ($($number:ty),*) => {$(
        impl Encode for $number {
            fn encode(&self, out: &mut Vec<u8>) {
                encode_number(u64::from(*self), out);
            }

            fn decode(from: &mut Reader<'_>) -> Self {
                from.number_below(<$number>::MAX.into()) as $number
            }
        }
    )*};
}
unsigned!(u16, u32, u64);

macro_rules! signed {
    ($($number:ty, $unsigned:ty);*) => {$(
        impl Encode for $number {
            fn encode(&self, out: &mut Vec<u8>) {
                let number = i64::from(*self);
                encode_number(((number << 1) ^ (number >> 63)) as u64, out);
            }

            fn decode(from: &mut Reader<'_>) -> Self {
                let number = from.number_below(<$unsigned>::MAX.into());
                ((number >> 1) as i64 ^ -((number & 1) as i64)) as $number
            }
        }
    )*};
}
signed!(i16, u16; i32, u32; i64, u64);

impl Encode for u8 {
    fn encode(&self, out: &mut Vec<u8>) {
        out.push(*self);
    }

    fn decode(from: &mut Reader<'_>) -> Self {
        from.byte()
    }
}

impl Encode for bool {
    fn encode(&self, out: &mut Vec<u8>) {
        out.push(u8::from(*self));
    }

    fn decode(from: &mut Reader<'_>) -> Self {
        match from.byte() {
            byte @ 0..=1 => byte == 1,
            _ => {
                from.fail();
                false
            }
        }
    }
}

impl Encode for () {
    fn encode(&self, _: &mut Vec<u8>) {}

    fn decode(_: &mut Reader<'_>) -> Self {}
}

impl Encode for f32 {
    fn encode(&self, out: &mut Vec<u8>) {
        out.extend_from_slice(&self.to_le_bytes());
    }

    fn decode(from: &mut Reader<'_>) -> Self {
        from.bytes(4).first_chunk().map_or(0.0, |bytes| Self::from_le_bytes(*bytes))
    }
}

impl Encode for f64 {
    fn encode(&self, out: &mut Vec<u8>) {
        out.extend_from_slice(&self.to_le_bytes());
    }

    fn decode(from: &mut Reader<'_>) -> Self {
        from.bytes(8).first_chunk().map_or(0.0, |bytes| Self::from_le_bytes(*bytes))
    }
}

impl Encode for String {
    fn encode(&self, out: &mut Vec<u8>) {
        encode_number(self.len() as u64, out);
        out.extend_from_slice(self.as_bytes());
    }

    fn decode(from: &mut Reader<'_>) -> Self {
        let length = from.length();
        match Self::from_utf8(from.bytes(length).to_vec()) {
            Ok(text) => text,
            Err(_) => {
                from.fail();
                Self::new()
            }
        }
    }
}

impl Encode for Uuid {
    fn encode(&self, out: &mut Vec<u8>) {
        out.push(16);
        out.extend_from_slice(self.as_bytes());
    }

    fn decode(from: &mut Reader<'_>) -> Self {
        if from.byte() != 16 {
            from.fail();
        }
        from.id()
    }
}

impl<T: Encode> Encode for Box<T> {
    fn encode(&self, out: &mut Vec<u8>) {
        T::encode(self, out);
    }

    fn decode(from: &mut Reader<'_>) -> Self {
        Self::new(T::decode(from))
    }
}

impl<T: Encode> Encode for Option<T> {
    fn encode(&self, out: &mut Vec<u8>) {
        out.push(u8::from(self.is_some()));
        if let Some(value) = self {
            value.encode(out);
        }
    }

    fn decode(from: &mut Reader<'_>) -> Self {
        bool::decode(from).then(|| T::decode(from))
    }

    fn is_new(&self) -> bool {
        self.as_ref().is_some_and(T::is_new)
    }
}

impl<T: Encode> Encode for Vec<T> {
    fn encode(&self, out: &mut Vec<u8>) {
        encode_number(self.len() as u64, out);
        for value in self {
            value.encode(out);
        }
    }

    fn decode(from: &mut Reader<'_>) -> Self {
        let length = from.length();
        let mut list = Self::new();
        for _ in 0..length {
            // A false length is detected before the list grows to it.
            if from.failed {
                break;
            }
            list.push(T::decode(from));
        }
        list
    }

    fn is_new(&self) -> bool {
        self.iter().any(T::is_new)
    }
}

impl<T: Encode, const N: usize> Encode for [T; N] {
    fn encode(&self, out: &mut Vec<u8>) {
        for value in self {
            value.encode(out);
        }
    }

    fn decode(from: &mut Reader<'_>) -> Self {
        std::array::from_fn(|_| T::decode(from))
    }

    fn is_new(&self) -> bool {
        self.iter().any(T::is_new)
    }
}

macro_rules! tuples {
    ($(($($name:ident $at:tt),*)),*) => {$(
        impl<$($name: Encode),*> Encode for ($($name,)*) {
            fn encode(&self, out: &mut Vec<u8>) {
                $(self.$at.encode(out);)*
            }

            fn decode(from: &mut Reader<'_>) -> Self {
                ($($name::decode(from),)*)
            }

            fn is_new(&self) -> bool {
                false $(|| self.$at.is_new())*
            }
        }
    )*};
}
tuples!((A 0, B 1), (A 0, B 1, C 2), (A 0, B 1, C 2, D 3));

impl<K: Encode + Ord, V: Encode> Encode for BTreeMap<K, V> {
    fn encode(&self, out: &mut Vec<u8>) {
        encode_number(self.len() as u64, out);
        for (key, value) in self {
            key.encode(out);
            value.encode(out);
        }
    }

    fn decode(from: &mut Reader<'_>) -> Self {
        let rows = Vec::<(K, V)>::decode(from);
        // Keys are written in order; anything else was not written by this codec.
        if rows.windows(2).any(|pair| pair[0].0 >= pair[1].0) {
            from.fail();
        }
        // Not `collect`: it sorts first, and would compile a sort for every type of key and value.
        let mut map = Self::new();
        for (key, value) in rows {
            map.insert(key, value);
        }
        map
    }
}

impl<K: Encode + Ord> Encode for BTreeSet<K> {
    fn encode(&self, out: &mut Vec<u8>) {
        encode_number(self.len() as u64, out);
        for key in self {
            key.encode(out);
        }
    }

    fn decode(from: &mut Reader<'_>) -> Self {
        let mut set = Self::new();
        for key in Vec::decode(from) {
            set.insert(key);
        }
        set
    }
}

#[cfg(test)]
mod tests;
