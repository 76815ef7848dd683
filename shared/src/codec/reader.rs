//! Reading encoded bytes.

use uuid::Uuid;

/// A cursor over bytes to decode.
#[derive(Clone)]
pub struct Reader<'a> {
    rest: &'a [u8],
    failed: bool,
    newer: bool,
}

/// How far beyond the known variants the number of a newer version's variant may be.
const VARIANTS_AHEAD: u32 = 32;

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

    /// Reads one byte.
    pub(super) fn byte(&mut self) -> u8 {
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
    pub(crate) fn length(&mut self) -> usize {
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
