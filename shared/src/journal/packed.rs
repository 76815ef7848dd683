//! Entries in memory as they are stored: packed, about eleven bytes each instead of a hundred and fifty. What goes over
//! whole journals (import, backup, fold) holds them so, and decodes one after the other.
//!
//! # Decisions
//!
//! - **Whole journals are packed** (2026-11-29, `journal/packed.rs`). Import, backup and fold hold entries as the
//!   segments that are stored, eleven bytes a fact instead of a hundred and fifty, and decode them one after the
//!   other; the fold merges one stream for each stretch of a segment in which stamps rise. A merge compares both
//!   sides where they overlap. Only if a device was forked, or a file has its entries in another order than the app
//!   writes them, all entries are decoded at once, as before; a property test compares both ways byte by byte. The
//!   ZIP reader and writer hold 256 kB of the journal at a time.

use super::fork::is_derived;
use super::record::BytesProblem;
use super::segment::{OpenSegment, Segment, Unpacked};
use super::{Coverage, Entry, Journal, JournalFact};
use crate::collections::sort_by_key;
use crate::ids::DeviceId;
use std::cmp::Ordering;
use std::collections::{BTreeSet, BinaryHeap};
use std::marker::PhantomData;

/// Packed entries, in the order in which they were packed.
pub struct Packed<F> {
    segments: Vec<Segment>,
    facts: PhantomData<F>,
}

impl<F> Clone for Packed<F> {
    fn clone(&self) -> Self {
        Self::of_segments(self.segments.clone())
    }
}

impl<F> std::fmt::Debug for Packed<F> {
    fn fmt(&self, out: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        self.segments.fmt(out)
    }
}

impl<F> PartialEq for Packed<F> {
    fn eq(&self, other: &Self) -> bool {
        self.segments == other.segments
    }
}

impl<F> Default for Packed<F> {
    fn default() -> Self {
        Self::of_segments(Vec::new())
    }
}

impl<F> Packed<F> {
    /// The entries of these segments.
    pub fn of_segments(segments: Vec<Segment>) -> Self {
        Self { segments, facts: PhantomData }
    }

    /// The segments.
    pub fn segments(&self) -> &[Segment] {
        &self.segments
    }

    /// The segments themselves.
    pub fn into_segments(self) -> Vec<Segment> {
        self.segments
    }

    /// Number of entries; those that are repeated are counted again.
    pub fn len(&self) -> u64 {
        self.segments.iter().map(|segment| segment.count).sum()
    }

    /// Whether there are no entries.
    pub fn is_empty(&self) -> bool {
        self.segments.is_empty()
    }

    /// Which facts are in it.
    pub fn coverage(&self) -> Coverage {
        let mut coverage = Coverage::default();
        for segment in &self.segments {
            coverage.add_range(segment.device, segment.first, segment.last());
        }
        coverage
    }

    /// Whether the entries are by rising device and number, each number once, and none is of a device that was forked:
    /// then they can be merged and folded as they are.
    pub(super) fn is_plain(&self) -> bool {
        let rises = |pair: &[Segment]| (pair[0].device, pair[0].last()) < (pair[1].device, pair[1].first);
        self.segments.windows(2).all(rises) && !self.segments.iter().any(|segment| is_derived(segment.device))
    }
}

impl<F: JournalFact> Packed<F> {
    /// These entries in the same order.
    pub fn of<'a>(entries: impl IntoIterator<Item = &'a Entry<F>>) -> Self
    where
        F: 'a,
    {
        let mut packer = Packer::default();
        entries.into_iter().for_each(|entry| packer.push(entry));
        packer.finish()
    }

    /// These entries by device and number, each number once: one segment for each contiguous range of numbers.
    pub fn sorted<'a>(entries: impl IntoIterator<Item = &'a Entry<F>>) -> Self
    where
        F: 'a,
    {
        let mut sorted: Vec<&Entry<F>> = entries.into_iter().collect();
        sort_by_key(&mut sorted, |entry| (entry.device, entry.seq));
        sorted.dedup_by_key(|entry| (entry.device, entry.seq));
        Self::of(sorted)
    }

    /// Entries that arrive, in the same order and as they are to be stored.
    pub fn arriving(entries: impl IntoIterator<Item = Entry<F>>) -> Self {
        let mut packer = Packer::default();
        entries.into_iter().for_each(|entry| packer.push(&entry.recognized().stored_form()));
        packer.finish()
    }

    /// The entries of a stored journal: its tail, and the bytes of its segments.
    ///
    /// # Errors
    /// [`BytesProblem`] if a segment does not decode.
    pub fn stored(tail: &[Entry<F>], segments: impl IntoIterator<Item = Vec<u8>>) -> Result<Self, BytesProblem> {
        let mut all = Self::sorted(tail).segments;
        for bytes in segments {
            all.push(Segment::of::<F>(bytes).map_err(|(problem, _)| problem)?);
        }
        sort_by_key(&mut all, |segment| (segment.device, segment.first));
        Ok(Self::of_segments(all))
    }

    /// The entries, decoded one after the other.
    pub fn entries(&self) -> impl Iterator<Item = Entry<F>> {
        self.segments.iter().flat_map(Segment::entries)
    }

    /// The entries for which `keep` holds, packed again.
    #[must_use]
    pub fn filtered(&self, keep: impl Fn(&Entry<F>) -> bool) -> Self {
        let mut packer = Packer::default();
        self.entries().filter(keep).for_each(|entry| packer.push(&entry));
        packer.finish()
    }

    /// The entries that `known` does not contain.
    #[must_use]
    pub(super) fn beyond(&self, known: &Coverage) -> Self {
        let mut packer = Packer::default();
        for segment in &self.segments {
            if known.next_seq(segment.device) == 1 {
                packer.push_segment(segment);
            } else {
                segment
                    .entries::<F>()
                    .filter(|entry| !known.holds(entry.device, entry.seq))
                    .for_each(|entry| packer.push(&entry));
            }
        }
        packer.finish()
    }

    /// The segments of the tail of a journal and of the entries that are added to it: one for each contiguous range, as
    /// [`sorted`](Self::sorted) of both together gives them. These entries must be by device and number.
    #[must_use]
    pub fn with_tail(&self, tail: &[Entry<F>]) -> Self {
        let tail = Self::sorted(tail);
        let devices: BTreeSet<DeviceId> =
            tail.segments.iter().chain(&self.segments).map(|segment| segment.device).collect();
        let mut packer = Packer::default();
        for device in devices {
            let (tail, added) = (tail.of_device(device), self.of_device(device));
            if tail.is_empty() {
                added.segments.iter().for_each(|segment| packer.push_segment(segment));
                continue;
            }
            let mut last = None;
            for entry in by_number(&[&tail, &added]) {
                if last.replace(entry.seq) != Some(entry.seq) {
                    packer.push(&entry);
                }
            }
        }
        packer.finish()
    }

    fn of_device(&self, device: DeviceId) -> Self {
        Self::of_segments(self.segments.iter().filter(|segment| segment.device == device).cloned().collect())
    }

    /// Whether both have the same entry under each number that both have. Only for plain ones.
    pub(super) fn agrees_with(&self, other: &Self) -> bool {
        self.segments.iter().all(|segment| {
            let from =
                other.segments.partition_point(|held| (held.device, held.last()) < (segment.device, segment.first));
            let overlaps = |held: &&Segment| held.device == segment.device && held.first <= segment.last();
            other.segments[from..].iter().take_while(overlaps).all(|held| same_entries::<F>(segment, held))
        })
    }
}

/// Whether two segments of one device have the same entries where they overlap.
fn same_entries<F: JournalFact>(one: &Segment, other: &Segment) -> bool {
    let first = one.first.max(other.first);
    let from = |segment: &'_ Segment| (first - segment.first) as usize;
    let pairs = one.entries::<F>().skip(from(one)).zip(other.entries::<F>().skip(from(other)));
    pairs.into_iter().all(|(one, other)| one == other || one.recognized().is_same(&other.recognized()))
}

/// Packs entries as they come. Each contiguous range becomes a segment.
pub struct Packer<F> {
    closed: Vec<Segment>,
    open: Option<OpenSegment>,
    facts: PhantomData<F>,
}

impl<F> Default for Packer<F> {
    fn default() -> Self {
        Self { closed: Vec::new(), open: None, facts: PhantomData }
    }
}

impl<F> Packer<F> {
    fn close(&mut self) {
        self.closed.extend(self.open.take().map(OpenSegment::close));
    }

    /// All that was packed.
    pub fn finish(mut self) -> Packed<F> {
        self.close();
        Packed::of_segments(self.closed)
    }
}

impl<F: JournalFact> Packer<F> {
    /// Packs an entry.
    pub fn push(&mut self, entry: &Entry<F>) {
        if !self.open.as_ref().is_some_and(|open| open.takes(entry)) {
            self.close();
        }
        self.open.get_or_insert_with(|| OpenSegment::new(entry.device, entry.seq)).push(entry);
    }

    /// Packs the entries of a segment; as it is, if its first entry does not follow the last one.
    fn push_segment(&mut self, segment: &Segment) {
        let follows = |device, next| device == segment.device && next == segment.first;
        let joins = match (&self.open, self.closed.last()) {
            (Some(open), _) => follows(open.device, open.next),
            (None, Some(last)) => follows(last.device, last.first + last.count),
            (None, None) => false,
        };
        if joins {
            if self.open.is_none()
                && let Some(last) = self.closed.pop()
            {
                last.entries::<F>().for_each(|entry| self.push(&entry));
            }
            segment.entries::<F>().for_each(|entry| self.push(&entry));
        } else {
            self.close();
            self.closed.push(segment.clone());
        }
    }
}

/// What entries are sorted by.
type Key<F, K> = fn(&Entry<F>, usize) -> K;

/// Sorted streams of entries as one.
pub(super) struct Sorted<'a, F, K> {
    streams: BinaryHeap<Stream<'a, F, K>>,
    key: Key<F, K>,
}

/// A stream, by its next entry.
struct Stream<'a, F, K> {
    key: K,
    next: Entry<F>,
    rest: Unpacked<'a, F>,
    /// Which segment it is of.
    of: usize,
}

impl<F, K: Ord> PartialEq for Stream<'_, F, K> {
    fn eq(&self, other: &Self) -> bool {
        self.key == other.key
    }
}

impl<F, K: Ord> Eq for Stream<'_, F, K> {}

impl<F, K: Ord> PartialOrd for Stream<'_, F, K> {
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

impl<F, K: Ord> Ord for Stream<'_, F, K> {
    /// The heap gives the greatest first.
    fn cmp(&self, other: &Self) -> Ordering {
        other.key.cmp(&self.key)
    }
}

impl<'a, F: JournalFact, K: Ord> Sorted<'a, F, K> {
    fn of(packed: &[&'a Packed<F>], key: Key<F, K>) -> Self {
        let mut streams = Vec::new();
        for (of, segment) in packed.iter().flat_map(|packed| &packed.segments).enumerate() {
            add_streams(segment.entries(), of, key, &mut streams);
        }
        Self { streams: streams.into(), key }
    }
}

/// Adds the rising stretches of a segment: one, unless a clock ran back or the entries are forged.
fn add_streams<'a, F: JournalFact, K: Ord>(
    mut rest: Unpacked<'a, F>,
    of: usize,
    key: Key<F, K>,
    streams: &mut Vec<Stream<'a, F, K>>,
) {
    let Some(mut next) = rest.next() else { return };
    loop {
        let (first, begun) = (key(&next, of), rest.clone());
        let left = begun.left();
        let mut last = key(&next, of);
        let fallen = loop {
            let Some(entry) = rest.next() else { break None };
            let key = key(&entry, of);
            if key < last {
                break Some(entry);
            }
            last = key;
        };
        // The one that broke the stretch is not of it.
        let taken = left - rest.left() - u64::from(fallen.is_some());
        streams.push(Stream { key: first, next, rest: begun.up_to(taken), of });
        match fallen {
            Some(entry) => next = entry,
            None => return,
        }
    }
}

impl<F: JournalFact, K: Ord> Iterator for Sorted<'_, F, K> {
    type Item = Entry<F>;

    fn next(&mut self) -> Option<Entry<F>> {
        let mut first = self.streams.peek_mut()?;
        match first.rest.next() {
            Some(entry) => {
                first.key = (self.key)(&entry, first.of);
                Some(std::mem::replace(&mut first.next, entry))
            }
            None => Some(std::collections::binary_heap::PeekMut::pop(first).next),
        }
    }
}

/// The entries of several packed journals in the order of the fold, as this version knows them. All of them must be plain
/// and have no number in common.
pub(super) fn in_order<'a, F: JournalFact>(packed: &[&'a Packed<F>]) -> impl Iterator<Item = Entry<F>> + use<'a, F> {
    Sorted::of(packed, |entry, _| entry.key()).map(Entry::recognized)
}

/// Gives the stored entries in the order of the fold to `take`, as this version knows them.
pub fn in_fold_order<F: JournalFact>(stored: &Packed<F>, take: &mut dyn FnMut(&mut dyn Iterator<Item = Entry<F>>)) {
    if stored.is_plain() {
        take(&mut in_order(&[stored]));
    } else {
        let journal = Journal::stored(stored.entries().collect());
        take(&mut journal.in_order().into_iter().cloned());
    }
}

/// The entries of several packed journals by device and number; those with one number are in
/// the order of the journals and their segments.
pub fn by_number<'a, F: JournalFact>(packed: &[&'a Packed<F>]) -> impl Iterator<Item = Entry<F>> + use<'a, F> {
    Sorted::of(packed, |entry, of| (entry.device, entry.seq, of))
}
