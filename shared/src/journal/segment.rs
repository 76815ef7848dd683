//! Many entries of one device as bytes, as the journal is stored after compaction.
//!
//! Schema, version 2: one byte `2`; device (16 bytes); first sequence number; count; the subjects as a list
//! (each 16 bytes) in order of first use; then for each entry: wall time of the stamp as the signed difference to the
//! entry before, counter, wall time as the signed difference to that of the stamp, index of the subject, fact. Sequence
//! numbers have no gaps. Version 1 is the same without the wall times. **Frozen**: a change is a new version with its
//! own decoder next to these.

use super::record::{BytesProblem, decode_fact, encode_fact, lag, with_lag};
use super::{Entry, JournalFact, Stamp};
use crate::codec::{Encode, Reader};
use crate::ids::DeviceId;
use crate::time::WallTime;
use std::collections::HashMap;
use std::marker::PhantomData;
use std::sync::Arc;
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
    /// Number of entries, at least one.
    pub count: u64,
    /// The stored bytes. Clones of a segment share them.
    pub bytes: Arc<Vec<u8>>,
}

impl Segment {
    /// The segment that these bytes are. Every entry in it is read once.
    ///
    /// # Errors
    /// [`BytesProblem`] and the bytes; bytes left over at the end count as damage, and so do none at all.
    pub fn of<F: JournalFact>(bytes: Vec<u8>) -> Result<Self, (BytesProblem, Vec<u8>)> {
        let range = Unpacked::<F>::of(&bytes).and_then(|(mut entries, count)| {
            let (device, first) = (entries.device, entries.seq);
            while entries.next().is_some() {}
            entries.ended().map(|()| (device, first, count))
        });
        match range {
            Ok((device, first, count)) => Ok(Self { device, first, count, bytes: Arc::new(bytes) }),
            Err(problem) => Err((problem, bytes)),
        }
    }

    /// Sequence number of the last entry.
    pub fn last(&self) -> u64 {
        self.first + (self.count - 1)
    }

    /// The entries by rising sequence number.
    pub fn entries<F: JournalFact>(&self) -> Unpacked<'_, F> {
        Unpacked::of(&self.bytes).map_or_else(|_| Unpacked::none(), |(entries, _)| entries)
    }
}

/// A segment being written, entry after entry.
pub(super) struct OpenSegment {
    pub(super) device: DeviceId,
    first: u64,
    /// The number of the entry that may follow.
    pub(super) next: u64,
    subjects: Vec<Uuid>,
    index: HashMap<Uuid, u64>,
    body: Vec<u8>,
    wall: u64,
}

impl OpenSegment {
    /// A segment that begins with this number.
    pub(super) fn new(device: DeviceId, first: u64) -> Self {
        Self { device, first, next: first, subjects: Vec::new(), index: HashMap::new(), body: Vec::new(), wall: 0 }
    }

    /// Appends the entry that follows.
    pub(super) fn push<F: JournalFact>(&mut self, entry: &Entry<F>) {
        let next = self.subjects.len() as u64;
        let subject = *self.index.entry(entry.subject).or_insert(next);
        if subject == next {
            self.subjects.push(entry.subject);
        }
        let wall = entry.stamp.wall.unix_ms();
        let step = wall.wrapping_sub(self.wall) as i64;
        (step, entry.stamp.counter, lag(entry), subject).encode(&mut self.body);
        encode_fact(&entry.fact, &mut self.body);
        self.wall = wall;
        self.next += 1;
    }

    /// Whether this entry follows, and there is room for it.
    pub(super) fn takes<F>(&self, entry: &Entry<F>) -> bool {
        entry.device == self.device && entry.seq == self.next && self.next - self.first < MOST
    }

    /// The segment.
    pub(super) fn close(self) -> Segment {
        let count = self.next - self.first;
        drop(self.index);
        let mut bytes = Vec::with_capacity(32 + 16 * self.subjects.len() + self.body.len());
        bytes.push(VERSION);
        bytes.extend_from_slice(self.device.as_bytes());
        (self.first, count, self.subjects.len() as u64).encode(&mut bytes);
        for subject in &self.subjects {
            bytes.extend_from_slice(subject.as_bytes());
        }
        bytes.extend_from_slice(&self.body);
        Segment { device: self.device, first: self.first, count, bytes: Arc::new(bytes) }
    }
}

/// Decodes the entries of a segment by rising sequence number.
///
/// # Errors
/// [`BytesProblem`]; bytes left over at the end count as damage.
pub fn unpack<F: JournalFact>(bytes: &[u8]) -> Result<Vec<Entry<F>>, BytesProblem> {
    let (mut unpacked, count) = Unpacked::of(bytes)?;
    let mut entries = Vec::with_capacity(count as usize);
    entries.extend(&mut unpacked);
    unpacked.ended().map(|()| entries)
}

/// The entries of a segment, decoded one after the other. It ends early at bytes that do not decode.
pub struct Unpacked<'a, F> {
    from: Reader<'a>,
    version: u8,
    /// The subjects, sixteen bytes each.
    subjects: &'a [u8],
    device: DeviceId,
    /// Number of the next entry.
    seq: u64,
    left: u64,
    wall: u64,
    facts: PhantomData<F>,
}

impl<F> Clone for Unpacked<'_, F> {
    fn clone(&self) -> Self {
        Self { from: self.from.clone(), facts: PhantomData, ..*self }
    }
}

impl<'a, F: JournalFact> Unpacked<'a, F> {
    fn none() -> Self {
        let (device, facts) = (Uuid::nil(), PhantomData);
        Self { from: Reader::of(&[]), version: VERSION, subjects: &[], device, seq: 0, left: 0, wall: 0, facts }
    }

    /// The entries in these bytes, and their number.
    fn of(bytes: &'a [u8]) -> Result<(Self, u64), BytesProblem> {
        let (version, rest) = match bytes.split_first() {
            Some((version @ 1..=VERSION, rest)) => (*version, rest),
            Some((&version, _)) if version > VERSION => return Err(BytesProblem::Newer(version)),
            _ => return Err(BytesProblem::Damaged),
        };
        let mut from = Reader::of(rest);
        let device = from.id();
        let (seq, count, subjects): (u64, u64, u64) = Encode::decode(&mut from);
        // An entry takes at least five bytes, a subject sixteen.
        let left = from.left() as u64;
        if from.has_failed() || count == 0 || count > MOST || count > left || subjects > left / 16 {
            return Err(BytesProblem::Damaged);
        }
        seq.checked_add(count - 1).ok_or(BytesProblem::Damaged)?;
        let subjects = from.bytes(subjects as usize * 16);
        Ok((Self { from, version, subjects, device, seq, left: count, wall: 0, facts: PhantomData }, count))
    }

    /// Whether all of it was read, after the last entry.
    fn ended(self) -> Result<(), BytesProblem> {
        if self.from.is_newer() {
            return Err(BytesProblem::Newer(self.version));
        }
        self.from.finish(()).filter(|()| self.left == 0).ok_or(BytesProblem::Damaged)
    }

    /// Number of entries that are left.
    pub(super) fn left(&self) -> u64 {
        self.left
    }

    /// The same entries, but no more than this number of them.
    pub(super) fn up_to(self, count: u64) -> Self {
        Self { left: self.left.min(count), ..self }
    }
}

impl<F: JournalFact> Iterator for Unpacked<'_, F> {
    type Item = Entry<F>;

    fn next(&mut self) -> Option<Entry<F>> {
        if self.left == 0 {
            return None;
        }
        let from = &mut self.from;
        let (step, counter): (i64, u32) = Encode::decode(from);
        self.wall = self.wall.wrapping_add(step as u64);
        let stamp = Stamp { wall: WallTime::from_unix_ms(self.wall), counter };
        let at = with_lag(stamp, if self.version == 1 { 0 } else { Encode::decode(from) });
        let subject = usize::try_from(u64::decode(from)).ok().and_then(|at| at.checked_mul(16));
        let subject = subject.and_then(|at| self.subjects.get(at..at.checked_add(16)?));
        let fact = decode_fact(from);
        let subject = subject.and_then(|bytes| Uuid::from_slice(bytes).ok());
        let Some(subject) = subject.filter(|_| !from.has_failed()) else {
            from.fail();
            return None;
        };
        let seq = self.seq;
        self.left -= 1;
        self.seq = seq.wrapping_add(1);
        Some(Entry { device: self.device, seq, stamp, at, subject, fact })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::facts::Fact;
    use crate::journal::Packed;
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
        let segments = Packed::sorted(&entries);
        assert_eq!(segments.segments().iter().map(|segment| segment.first).collect::<Vec<_>>(), [1, 5]);
        let back: Vec<Entry> = segments.segments().iter().flat_map(|s| unpack(&s.bytes).unwrap()).collect();
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
        assert_eq!(Packed::sorted(&entries).segments()[0].bytes.as_slice(), frozen);
        assert_eq!(unpack(frozen).unwrap(), entries);
    }

    #[test]
    fn a_count_costs_under_twenty_bytes() {
        let entries: Vec<Entry> = (1..=1000).map(|seq| entry(seq, seq * 41_337, u128::from(seq / 60))).collect();
        let bytes = Packed::sorted(&entries).segments()[0].bytes.len();
        assert!(bytes <= 20 * entries.len(), "{bytes}");
    }

    #[test]
    fn damaged_bytes_are_refused_without_allocating() {
        let good = Packed::sorted(&[entry(1, 10, 1), entry(2, 20, 1)]).segments()[0].bytes.to_vec();
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
