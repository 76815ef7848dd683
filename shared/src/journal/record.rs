//! A single entry as bytes: how the tail of the journal is stored.
//!
//! Schema, version 2: one byte `2`; then in postcard: device (16 bytes), number, wall time of the stamp, counter,
//! wall time as the signed difference to that of the stamp, subject (16 bytes), and the fact as in `encode_fact`.
//! Version 1 is the same without the wall time. **Frozen**; a change is a new version with a decoder of its own
//! beside these.

use super::{Entry, JournalFact, Stamp};
use crate::codec::{Encode, Reader};
use crate::time::WallTime;

/// The version written.
pub const VERSION: u8 = 2;

/// Stored bytes that this version cannot read.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Encode)]
pub enum BytesProblem {
    /// Written by a newer version of Lastpull: in this version of the format, or with a fact that is not known here.
    Newer(u8),
    /// Truncated, overwritten or written by something else.
    Damaged,
}

/// Encodes a fact: one byte 1 and the fact in postcard, or one byte 0 and an unknown fact's kind and JSON. Facts added
/// after version 1.0 are given to it as unknown ([`JournalFact::stored_form`]), so that an older version reads them.
pub(super) fn encode_fact<F: JournalFact>(fact: &F, out: &mut Vec<u8>) {
    match fact.as_unknown() {
        Some((kind, body)) => {
            out.push(0);
            kind.encode(out);
            body.encode(out);
        }
        None => {
            out.push(1);
            fact.encode(out);
        }
    }
}

/// Reads what `encode_fact` wrote.
pub(super) fn decode_fact<F: JournalFact>(from: &mut Reader<'_>) -> F {
    if bool::decode(from) { F::decode(from) } else { F::unknown(Encode::decode(from), Encode::decode(from)) }
}

/// Encodes an entry.
pub fn encode<F: JournalFact>(entry: &Entry<F>) -> Vec<u8> {
    let mut out = vec![VERSION];
    out.extend_from_slice(entry.device.as_bytes());
    (entry.seq, entry.stamp.wall, entry.stamp.counter, lag(entry)).encode(&mut out);
    out.extend_from_slice(entry.subject.as_bytes());
    encode_fact(&entry.fact, &mut out);
    out
}

/// How far the wall time is behind (negative) or ahead of that of the stamp, in milliseconds.
pub(super) fn lag<F>(entry: &Entry<F>) -> i64 {
    entry.at.unix_ms().wrapping_sub(entry.stamp.wall.unix_ms()) as i64
}

/// The wall time that [`lag`] is the difference of.
pub(super) fn with_lag(stamp: Stamp, lag: i64) -> WallTime {
    WallTime::from_unix_ms(stamp.wall.unix_ms().wrapping_add(lag as u64))
}

/// Decodes an entry.
///
/// # Errors
/// [`BytesProblem`]; bytes left over after the fact count as damage.
pub fn decode<F: JournalFact>(bytes: &[u8]) -> Result<Entry<F>, BytesProblem> {
    match bytes.split_first() {
        Some((version @ 1..=VERSION, rest)) => decode_body(rest, *version),
        Some((&version, _)) if version > VERSION => Err(BytesProblem::Newer(version)),
        _ => Err(BytesProblem::Damaged),
    }
}

fn decode_body<F: JournalFact>(bytes: &[u8], version: u8) -> Result<Entry<F>, BytesProblem> {
    let mut from = Reader::of(bytes);
    let device = from.id();
    let (seq, wall, counter) = Encode::decode(&mut from);
    let stamp = Stamp { wall, counter };
    let at = with_lag(stamp, if version == 1 { 0 } else { Encode::decode(&mut from) });
    let subject = from.id();
    let fact = decode_fact(&mut from);
    if from.is_newer() {
        return Err(BytesProblem::Newer(version));
    }
    from.finish(Entry { device, seq, stamp, at, subject, fact }).ok_or(BytesProblem::Damaged)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::facts::Fact;
    use crate::time::wall;
    use uuid::Uuid;

    type Entry = crate::journal::Entry<Fact>;

    fn pulled() -> Entry {
        Entry {
            device: Uuid::from_u128(1),
            seq: 300,
            stamp: Stamp { wall: wall(1_790_000_000_000), counter: 0 },
            at: wall(1_790_000_000_000),
            subject: Uuid::from_u128(2),
            fact: Fact::Pulled { pieces: 1, size: None },
        }
    }

    /// These bytes are stored on users' devices.
    #[test]
    fn the_bytes_of_version_1_are_frozen() {
        let frozen: &[u8] = &[
            1, // version
            0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1, // device
            0xac, 0x02, // number 300
            0x80, 0xd8, 0xc1, 0xa2, 0x8c, 0x34, // wall
            0,    // counter
            0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 2, // subject
            1, 16, 2, 0, // a known fact: variant 16, +1 in zigzag, no size
        ];
        assert_eq!(decode(frozen), Ok(pulled()));
    }

    /// These bytes are stored on users' devices.
    #[test]
    fn the_bytes_of_version_2_are_frozen() {
        let frozen: &[u8] = &[
            2, // version
            0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1, // device
            0xac, 0x02, // number 300
            0x80, 0xd8, 0xc1, 0xa2, 0x8c, 0x34, // wall time of the stamp
            0,    // counter
            0xdf, 0xd4, 0x03, // the clock 30 s behind: 29,999 in zigzag
            0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 2, // subject
            1, 16, 2, 0, // a known fact: variant 16, +1 in zigzag, no size
        ];
        let entry = Entry { at: wall(1_789_999_970_000), ..pulled() };
        assert_eq!(encode(&entry), frozen);
        assert_eq!(decode(frozen), Ok(entry));
    }

    #[test]
    fn unknown_facts_round_trip_through_bytes() {
        let fact = Fact::Unknown { kind: "later".into(), body: r#"{"later":7}"#.into() };
        let entry = Entry { fact, ..pulled() };
        assert_eq!(decode(&encode(&entry)), Ok(entry));
    }

    #[test]
    fn newer_truncated_and_trailing_bytes_are_distinguished() {
        let good = encode(&pulled());
        let mut newer = good.clone();
        newer[0] = 9;
        assert_eq!(decode::<Fact>(&newer), Err(BytesProblem::Newer(9)));
        for cut in 0..good.len() {
            assert_eq!(decode::<Fact>(&good[..cut]), Err(BytesProblem::Damaged), "{cut}");
        }
        let mut long = good;
        long.push(0);
        assert_eq!(decode::<Fact>(&long), Err(BytesProblem::Damaged));
    }
}
