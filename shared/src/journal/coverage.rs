//! Which facts of each device are present, and which are missing.

use super::Entry;
use super::fork::{Family, family_of, is_derived};
use crate::codec::{Encode, Reader};
use crate::collections::{Table, sort_by_key};
use crate::ids::DeviceId;
use std::collections::{BTreeMap, BTreeSet};

/// Sequence numbers of one device from `first` to `last`, both included. **Frozen**: part of the head that is stored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Encode)]
struct SeqRange {
    first: u64,
    last: u64,
}

/// For each device, the ranges of sequence numbers that are present: sorted, and never adjacent.
#[derive(Clone, Debug, PartialEq, Eq, Default)]
pub struct Coverage {
    held: Table<Vec<SeqRange>>,
}

/// A map from each device to its ranges. **Frozen**: part of the head that is stored.
impl Encode for Coverage {
    fn encode(&self, out: &mut Vec<u8>) {
        self.held.encode_map(out);
    }

    fn decode(from: &mut Reader<'_>) -> Self {
        Self { held: Table::decode_map(from) }
    }
}

/// Facts that must exist, because later ones of the same device are present, but are missing.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Encode)]
pub struct Gap {
    /// The device that recorded them.
    pub device: DeviceId,
    /// The first missing number.
    pub first: u64,
    /// The last missing number.
    pub last: u64,
}

/// More than any shop has: entries that no shop's devices wrote, and which are not taken in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Encode)]
pub enum TooMany {
    /// Devices.
    Devices,
    /// Ranges of missing numbers.
    Gaps,
    /// Numbers that are missing in one place.
    Missing(Gap),
}

impl Gap {
    /// Number of missing facts.
    pub fn len(&self) -> u64 {
        self.last - self.first + 1
    }

    /// Always `false`: a gap contains at least one fact.
    pub fn is_empty(&self) -> bool {
        false
    }
}

impl Coverage {
    /// Most devices: a shop of ten that takes new phones every year has a hundred in ten years.
    const MOST_DEVICES: usize = 1_000;
    /// Most ranges of numbers. Each is a few bytes of the head, which is written at every count.
    const MOST_RANGES: usize = 4_000;
    /// Most numbers missing in one place: years of one device's facts.
    const MOST_MISSING: u64 = 1_000_000;

    /// Whether a shop can have these facts: every count reads and writes the coverage, so it must stay small.
    ///
    /// # Errors
    /// [`TooMany`]
    pub fn check_bounds(&self) -> Result<(), TooMany> {
        if self.held.len() > Self::MOST_DEVICES {
            return Err(TooMany::Devices);
        }
        if self.ranges() > Self::MOST_RANGES {
            return Err(TooMany::Gaps);
        }
        self.gaps()
            .into_iter()
            .find(|gap| gap.len() > Self::MOST_MISSING)
            .map_or(Ok(()), |gap| Err(TooMany::Missing(gap)))
    }

    /// Whether this fact is present.
    pub fn holds(&self, device: DeviceId, seq: u64) -> bool {
        self.held.get(&device).is_some_and(|ranges| {
            let after = ranges.partition_point(|range| range.first <= seq);
            after > 0 && ranges[after - 1].last >= seq
        })
    }

    /// Whether every fact of `other` is present here too.
    pub fn contains(&self, other: &Self) -> bool {
        // Ranges are never adjacent, so a range that is present whole is inside one range.
        other.held.iter().all(|(device, ranges)| {
            let held = self.held.get(device);
            ranges.iter().all(|range| {
                held.is_some_and(|held| {
                    let after = held.partition_point(|other| other.first <= range.first);
                    after > 0 && held[after - 1].last >= range.last
                })
            })
        })
    }

    /// Marks a fact as present. Marking it again changes nothing.
    pub fn add(&mut self, device: DeviceId, seq: u64) {
        let ranges = self.held.get_or_insert_default(device);
        let after = ranges.partition_point(|range| range.first <= seq);
        if after > 0 && ranges[after - 1].last >= seq {
            return;
        }
        let joins_before = after > 0 && ranges[after - 1].last + 1 == seq;
        let joins_after = ranges.get(after).is_some_and(|range| range.first == seq + 1);
        match (joins_before, joins_after) {
            (true, true) => {
                ranges[after - 1].last = ranges[after].last;
                ranges.remove(after);
            }
            (true, false) => ranges[after - 1].last = seq,
            (false, true) => ranges[after].first = seq,
            (false, false) => ranges.insert(after, SeqRange { first: seq, last: seq }),
        }
    }

    /// Marks the facts of a range as present, from `first` to `last`.
    pub fn add_range(&mut self, device: DeviceId, first: u64, last: u64) {
        let ranges = self.held.get_or_insert_default(device);
        let from = ranges.partition_point(|range| range.last.saturating_add(1) < first);
        let to = ranges.partition_point(|range| range.first <= last.saturating_add(1));
        let touched = ranges.get(from..to).unwrap_or_default();
        let first = touched.first().map_or(first, |range| range.first.min(first));
        let last = touched.last().map_or(last, |range| range.last.max(last));
        ranges.splice(from..to, [SeqRange { first, last }]);
    }

    /// Marks every fact of `other` as present.
    pub fn add_coverage(&mut self, other: &Self) {
        for (device, ranges) in other.held.iter() {
            ranges.iter().for_each(|range| self.add_range(*device, range.first, range.last));
        }
    }

    /// Marks all of these entries as present.
    pub fn add_all<'a, F: 'a>(&mut self, entries: impl IntoIterator<Item = &'a Entry<F>>) {
        for entry in entries {
            self.add(entry.device, entry.seq);
        }
    }

    /// The number after the highest one present of a device; 1 if there is none.
    pub fn next_seq(&self, device: DeviceId) -> u64 {
        self.held.get(&device).and_then(|ranges| ranges.last()).map_or(1, |range| range.last + 1)
    }

    /// The ranges missing below the highest number of each device. A device's derived ids count as the device: under which
    /// of them a fact is, says nothing about the others, so only numbers that no fact has are missing.
    pub fn gaps(&self) -> Vec<Gap> {
        let mut gaps = Vec::new();
        let forked: BTreeSet<Family> = self.devices().filter(|id| is_derived(*id)).map(family_of).collect();
        let mut families = BTreeMap::<Family, (DeviceId, Vec<SeqRange>)>::new();
        for (&device, ranges) in self.held.iter() {
            if forked.contains(&family_of(device)) {
                let (named, all) = families.entry(family_of(device)).or_insert_with(|| (device, Vec::new()));
                if is_derived(*named) && !is_derived(device) {
                    *named = device;
                }
                all.extend_from_slice(ranges);
            } else {
                add_gaps(device, 1, ranges, &mut gaps);
            }
        }
        for (device, mut ranges) in families.into_values() {
            sort_by_key(&mut ranges, |range| *range);
            // Derived ids begin where the device was forked.
            let first = ranges.first().filter(|_| is_derived(device)).map_or(1, |range| range.first);
            add_gaps(device, first, &ranges, &mut gaps);
        }
        gaps
    }

    /// Number of facts present.
    pub fn len(&self) -> u64 {
        self.held.values().flatten().map(|range| range.last - range.first + 1).sum()
    }

    /// Number of unbroken ranges, of all devices together.
    pub fn ranges(&self) -> usize {
        self.held.values().map(Vec::len).sum()
    }

    /// Whether no fact is present.
    pub fn is_empty(&self) -> bool {
        self.held.is_empty()
    }

    /// The devices with facts present.
    pub fn devices(&self) -> impl Iterator<Item = DeviceId> {
        self.held.keys().copied()
    }
}

/// Adds the numbers from `next` on that are not in these ranges, which are by rising first number.
fn add_gaps(device: DeviceId, mut next: u64, ranges: &[SeqRange], gaps: &mut Vec<Gap>) {
    for &SeqRange { first, last } in ranges {
        if first > next {
            gaps.push(Gap { device, first: next, last: first - 1 });
        }
        next = next.max(last + 1);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;
    use std::collections::BTreeSet;
    use uuid::Uuid;

    #[test]
    fn a_missing_file_is_reported_as_a_gap() {
        let device = Uuid::from_u128(1);
        let mut coverage = Coverage::default();
        for seq in [1, 2, 6, 7] {
            coverage.add(device, seq);
        }
        assert_eq!(coverage.gaps(), vec![Gap { device, first: 3, last: 5 }]);
        assert_eq!(coverage.next_seq(device), 8);
        assert_eq!(coverage.len(), 4);
    }

    #[test]
    fn a_coverage_contains_another_if_no_fact_of_it_is_missing() {
        let of = |seqs: &[u64], device: u128| {
            let mut coverage = Coverage::default();
            seqs.iter().for_each(|seq| coverage.add(Uuid::from_u128(device), *seq));
            coverage
        };
        assert!(of(&[1, 2, 3, 7], 1).contains(&of(&[2, 3, 7], 1)));
        assert!(!of(&[1, 2, 4], 1).contains(&of(&[2, 3, 4], 1)));
        assert!(!of(&[1, 2], 1).contains(&of(&[1], 2)));
        assert!(of(&[], 1).contains(&Coverage::default()));
    }

    #[test]
    fn more_devices_or_gaps_than_a_shop_has_are_too_many() {
        let of = |rows: &mut dyn Iterator<Item = (u128, u64)>| {
            let mut coverage = Coverage::default();
            rows.for_each(|(device, seq)| coverage.add(Uuid::from_u128(device), seq));
            coverage.check_bounds()
        };
        assert_eq!(of(&mut (0..1_000).map(|device| (device, 1))), Ok(()));
        assert_eq!(of(&mut (0..1_001).map(|device| (device, 1))), Err(TooMany::Devices));
        assert_eq!(of(&mut (1..=4_000).map(|n| (1, n * 2))), Ok(()));
        assert_eq!(of(&mut (1..=4_001).map(|n| (1, n * 2))), Err(TooMany::Gaps));
        let gap = Gap { device: Uuid::from_u128(1), first: 2, last: (1 << 42) - 1 };
        assert_eq!(of(&mut [(1, 1), (1, 1 << 42)].into_iter()), Err(TooMany::Missing(gap)));
    }

    proptest! {
        #[test]
        fn a_coverage_contains_another_if_the_difference_of_the_sets_is_empty(
            mine in prop::collection::btree_set(1u64..40, 0..40),
            other in prop::collection::btree_set(1u64..40, 0..40),
        ) {
            let device = Uuid::from_u128(9);
            let of = |seqs: &BTreeSet<u64>| {
                let mut coverage = Coverage::default();
                seqs.iter().for_each(|seq| coverage.add(device, *seq));
                coverage
            };
            prop_assert_eq!(of(&other).contains(&of(&mine)), mine.difference(&other).next().is_none());
        }

        #[test]
        fn a_range_is_the_same_as_its_numbers_one_by_one(ranges in prop::collection::vec((1u64..60, 0u64..9), 0..20)) {
            let device = Uuid::from_u128(9);
            let (mut one_by_one, mut at_once) = (Coverage::default(), Coverage::default());
            for (first, more) in ranges {
                at_once.add_range(device, first, first + more);
                (first..=first + more).for_each(|seq| one_by_one.add(device, seq));
                prop_assert_eq!(&at_once, &one_by_one);
            }
        }

        #[test]
        fn coverage_equals_the_set_of_added_numbers(seqs in prop::collection::vec(1u64..60, 0..80)) {
            let device = Uuid::from_u128(9);
            let mut coverage = Coverage::default();
            let mut set = BTreeSet::new();
            for seq in seqs {
                coverage.add(device, seq);
                set.insert(seq);
            }
            for seq in 1..61 {
                prop_assert_eq!(coverage.holds(device, seq), set.contains(&seq));
            }
            prop_assert_eq!(coverage.len(), set.len() as u64);
            let missing: u64 = coverage.gaps().iter().map(Gap::len).sum();
            prop_assert_eq!(missing, set.last().copied().unwrap_or(0) - set.len() as u64);
        }
    }
}
