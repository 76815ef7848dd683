//! How numbers, texts and ids are encoded.

use super::{Encode, Reader, encode_number};
use uuid::Uuid;

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
