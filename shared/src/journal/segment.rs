//! Many entries of one device as bytes, as the journal is stored after the tail was consolidated.
//!
//! Schema, version 2: one byte `2`; device (16 bytes); first sequence number; count; the subjects as a list
//! (each 16 bytes) in order of first use; then for each entry: wall time of the stamp as the signed difference to the
//! entry before, counter, wall time as the signed difference to that of the stamp, index of the subject, fact. Sequence
//! numbers have no gaps. Version 1 is the same without the wall times. **Frozen**: a change is a new version with its
//! own decoder next to these.

use super::record::{BytesProblem, decode_fact, encode_fact, lag, with_lag};
use super::{Entry, JournalFact, Stamp};
use crate::codec::{Encode, Reader};
use crate::collections::sort_by_key;
use crate::ids::DeviceId;
use crate::time::WallTime;
use std::collections::{BTreeMap, HashMap};
use uuid::Uuid;

/// The version written.
pub const VERSION: u8 = 2;

/// Most entries in one segment, so that a damaged length cannot allocate all memory.
const MOST: u64 = 10_000_000;

/// A contiguous range of one device's entries as bytes.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Segment {
    /// The device that recorded the entries.
    pub device: DeviceId,
    /// Sequence number of the first entry.
    pub first: u64,
    /// The stored bytes.
    pub bytes: Vec<u8>,
}

/// Encodes entries, in any order, into one segment per contiguous range of sequence numbers. Duplicates are
/// encoded once.
pub fn pack<'a, F: JournalFact + 'a>(entries: impl IntoIterator<Item = &'a Entry<F>>) -> Vec<Segment> {
    let mut devices: BTreeMap<DeviceId, Vec<&Entry<F>>> = BTreeMap::new();
    for entry in entries {
        devices.entry(entry.device).or_default().push(entry);
    }
    let mut segments = Vec::new();
    for (_, mut list) in devices {
        sort_by_key(&mut list, |entry| entry.seq);
        list.dedup_by_key(|entry| entry.seq);
        for stretch in list.chunk_by(|before, after| before.seq + 1 == after.seq) {
            segments.push(pack_stretch(stretch));
        }
    }
    segments
}

fn pack_stretch<F: JournalFact>(stretch: &[&Entry<F>]) -> Segment {
    let (device, first) = (stretch[0].device, stretch[0].seq);
    let mut subjects = Vec::new();
    let mut index = HashMap::new();
    for entry in stretch {
        index.entry(entry.subject).or_insert_with(|| {
            subjects.push(entry.subject);
            subjects.len() as u64 - 1
        });
    }
    let mut bytes = Vec::with_capacity(32 + 16 * subjects.len() + 12 * stretch.len());
    bytes.push(VERSION);
    bytes.extend_from_slice(device.as_bytes());
    (first, stretch.len() as u64, subjects.len() as u64).encode(&mut bytes);
    for subject in &subjects {
        bytes.extend_from_slice(subject.as_bytes());
    }
    let mut before = 0_u64;
    for entry in stretch {
        let wall = entry.stamp.wall.unix_ms();
        let step = wall.wrapping_sub(before) as i64;
        (step, entry.stamp.counter, lag(entry), index[&entry.subject]).encode(&mut bytes);
        encode_fact(&entry.fact, &mut bytes);
        before = wall;
    }
    Segment { device, first, bytes }
}

/// Decodes the entries of a segment by rising sequence number.
///
/// # Errors
/// [`BytesProblem`]; bytes left over at the end count as damage.
pub fn unpack<F: JournalFact>(bytes: &[u8]) -> Result<Vec<Entry<F>>, BytesProblem> {
    match bytes.split_first() {
        Some((version @ 1..=VERSION, rest)) => {
            let mut from = Reader::of(rest);
            let entries = unpack_body(&mut from, *version);
            if from.is_newer() {
                return Err(BytesProblem::Newer(*version));
            }
            entries.and_then(|entries| from.finish(entries)).ok_or(BytesProblem::Damaged)
        }
        Some((&version, _)) if version > VERSION => Err(BytesProblem::Newer(version)),
        _ => Err(BytesProblem::Damaged),
    }
}

fn unpack_body<F: JournalFact>(from: &mut Reader<'_>, version: u8) -> Option<Vec<Entry<F>>> {
    let device = from.id();
    let (first, count, subject_count): (u64, u64, u64) = Encode::decode(from);
    // An entry takes at least five bytes, a subject sixteen.
    let left = from.left() as u64;
    if count > MOST || count > left || subject_count > left / 16 {
        return None;
    }
    let subjects: Vec<Uuid> = (0..subject_count).map(|_| from.id()).collect();
    let mut entries = Vec::with_capacity(count as usize);
    let mut wall = 0_u64;
    for number in 0..count {
        let (step, counter): (i64, u32) = Encode::decode(from);
        wall = wall.wrapping_add(step as u64);
        let stamp = Stamp { wall: WallTime::from_unix_ms(wall), counter };
        let at = with_lag(stamp, if version == 1 { 0 } else { Encode::decode(from) });
        let subject = u64::decode(from);
        let subject = *subjects.get(subject as usize)?;
        let seq = first.checked_add(number)?;
        entries.push(Entry { device, seq, stamp, at, subject, fact: decode_fact(from) });
        if from.has_failed() {
            return None;
        }
    }
    Some(entries)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::facts::Fact;
    use crate::time::wall;

    type Entry = crate::journal::Entry<Fact>;

    fn entry(seq: u64, unix_ms: u64, subject: u128) -> Entry {
        Entry {
            device: Uuid::from_u128(7),
            seq,
            stamp: Stamp { wall: wall(unix_ms), counter: 0 },
            at: wall(unix_ms),
            subject: Uuid::from_u128(subject),
            fact: Fact::Pulled { pieces: 1, size: None },
        }
    }

    #[test]
    fn a_gap_in_the_numbers_starts_a_segment() {
        let entries = [entry(1, 10, 1), entry(2, 5, 2), entry(5, 90, 1)];
        let segments = pack(&entries);
        assert_eq!(segments.iter().map(|segment| segment.first).collect::<Vec<_>>(), [1, 5]);
        let back: Vec<Entry> = segments.iter().flat_map(|s| unpack(&s.bytes).unwrap()).collect();
        assert_eq!(back, entries);
    }

    /// These bytes are stored on users' devices.
    #[test]
    fn the_bytes_of_version_1_are_frozen() {
        let frozen: &[u8] = &[
            1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 7, // version, device
            1, 2, 1, // first number, entries, subjects
            0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1, // the subject
            20, 0, 0, 1, 16, 2, 0, // 10 ms, counter, subject 0, a pull
            0x80, 0xf1, 0x04, 0, 0, 1, 16, 2, 0, // 40 s later, another
        ];
        let entries = [entry(1, 10, 1), entry(2, 40_010, 1)];
        assert_eq!(unpack(frozen).unwrap(), entries);
    }

    /// These bytes are stored on users' devices.
    #[test]
    fn the_bytes_of_version_2_are_frozen() {
        let frozen: &[u8] = &[
            2, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 7, // version, device
            1, 2, 1, // first number, entries, subjects
            0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1, // the subject
            20, 0, 0, 0, 1, 16, 2, 0, // 10 ms, counter, no difference, subject 0, a pull
            0x80, 0xf1, 0x04, 0, 9, 0, 1, 16, 2, 0, // 40 s later and the clock 5 ms behind, another
        ];
        let late = Entry { at: wall(40_005), ..entry(2, 40_010, 1) };
        let entries = [entry(1, 10, 1), late];
        assert_eq!(pack(&entries)[0].bytes, frozen);
        assert_eq!(unpack(frozen).unwrap(), entries);
    }

    #[test]
    fn a_count_costs_under_twenty_bytes() {
        let entries: Vec<Entry> = (1..=1000).map(|seq| entry(seq, seq * 41_337, u128::from(seq / 60))).collect();
        let bytes = pack(&entries)[0].bytes.len();
        assert!(bytes <= 20 * entries.len(), "{bytes}");
    }

    #[test]
    fn damaged_bytes_are_refused_without_allocating() {
        let good = pack(&[entry(1, 10, 1), entry(2, 20, 1)])[0].bytes.clone();
        for cut in 0..good.len() {
            assert!(unpack::<Fact>(&good[..cut]).is_err(), "{cut}");
        }
        let mut huge = good[..17].to_vec();
        (1u64, u64::MAX, u64::MAX).encode(&mut huge);
        assert_eq!(unpack::<Fact>(&huge), Err(BytesProblem::Damaged));
        let mut newer = good;
        newer[0] = 3;
        assert_eq!(unpack::<Fact>(&newer), Err(BytesProblem::Newer(3)));
    }
}
