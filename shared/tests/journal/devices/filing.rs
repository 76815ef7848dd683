//! Where the facts of a forked device are filed: however they arrive and are stored, the same facts make the same
//! journal.

use super::{MORNING, RUN, checkpoint, folded};
use lastpull_core::facts::{Entry, Fact, Journal, MemoryStorage};
use lastpull_core::journal::{Packed, Stamp, Storage, merge};
use lastpull_core::time::WallTime;
use pollster::block_on;
use proptest::prelude::*;
use proptest::sample::Index;
use std::cell::Cell;
use std::collections::BTreeSet;
use uuid::Uuid;

const DEVICE: Uuid = Uuid::from_u128(0xfd);

/// Facts of the device by number; for each, the seconds of their stamps. Some have one stamp.
type Numbers = Vec<Vec<u64>>;

/// How a fact is in a file: whether it is, and under the device's id or a derived one.
type Sent = (Index, Option<u8>);

fn facts(numbers: &Numbers) -> Vec<Entry> {
    let mut facts = Vec::new();
    for (seq, seconds) in (1..).zip(numbers) {
        for (nth, second) in (1..).zip(seconds) {
            let stamp = Stamp { wall: WallTime::from_unix_ms(MORNING + 1_000 * second), counter: 0 };
            let fact = Fact::Pulled { pieces: nth, size: None };
            facts.push(Entry { device: DEVICE, seq, stamp, at: stamp.wall, subject: RUN, fact });
        }
    }
    facts
}

/// The derived ids that other devices give are of the facts at and after the first number with two facts.
fn sent(facts: &[Entry], first: u64, (fact, derived): &Sent) -> Entry {
    let mut entry = facts[fact.index(facts.len())].clone();
    if let Some(nth) = derived.filter(|_| entry.seq >= first) {
        entry.device = Uuid::from_u128(DEVICE.as_u128() | (0x8_u128 << 76) | (0x8 << 60) | u128::from(nth) << 80);
    }
    entry
}

fn any_files() -> impl Strategy<Value = Vec<Vec<Sent>>> {
    let sent = (any::<Index>(), prop::option::of(0..3u8));
    prop::collection::vec(prop::collection::vec(sent, 0..12), 0..8)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    #[test]
    fn the_same_facts_of_a_forked_device_are_filed_alike_however_they_arrive(
        numbers in prop::collection::vec(prop::collection::vec(0..40u64, 1..4), 1..9),
        files in any_files(),
        rest in any::<u64>(),
    ) {
        let facts = facts(&numbers);
        let first = numbers.iter().position(|at| at.len() > 1).map_or(u64::MAX, |at| at as u64 + 1);
        let whole = Journal::of(facts.clone()).unwrap();
        prop_assert_eq!(whole.len(), facts.len());
        prop_assert_eq!(whole.is_forked(DEVICE), first < u64::MAX);
        prop_assert_eq!(whole.gaps(), []);
        let mut in_parts = Journal::default();
        let ids = Cell::new(0xd0);
        let storage = MemoryStorage::new(move || {
            ids.set(ids.get() + 1);
            Uuid::from_u128(ids.get())
        });
        // Some files, then everything, from its end or its beginning.
        let mut files: Vec<Vec<Entry>> =
            files.iter().map(|file| file.iter().map(|one| sent(&facts, first, one)).collect()).collect();
        files.push(if rest % 2 == 0 { facts.clone() } else { facts.iter().rev().cloned().collect() });
        for file in files {
            in_parts.absorb(file.clone()).unwrap();
            let merged = block_on(merge(&storage, &Packed::arriving(file), WallTime::MAX, folded)).unwrap();
            let stored = block_on(storage.read_all()).unwrap();
            let places: BTreeSet<_> = stored.iter().map(|entry| (entry.device, entry.seq)).collect();
            prop_assert_eq!(places.len(), stored.len(), "no fact takes the place of another");
            if merged.new > 0 {
                let opened = block_on(storage.open()).unwrap();
                prop_assert_eq!(opened.checkpoint, Some(checkpoint(&Journal::stored(stored))), "as read again");
            }
        }
        let stored = block_on(storage.read_all()).unwrap();
        prop_assert_eq!(&in_parts, &whole);
        prop_assert_eq!(&Journal::stored(stored), &whole);
    }
}

/// Two facts at 2, one at 3, two at 4: the second line is missing nothing at 3.
#[test]
fn only_a_number_that_no_fact_of_a_forked_device_has_is_missing() {
    let all = facts(&vec![vec![1], vec![2, 3], vec![4], vec![5, 6], vec![7], vec![8]]);
    let journal = Journal::of(all.clone()).unwrap();
    assert_eq!((journal.len(), journal.gaps()), (8, vec![]));
    let gaps_without = |seqs: &[u64]| {
        let left = all.iter().filter(|entry| !seqs.contains(&entry.seq)).cloned().collect();
        Journal::of(left).unwrap().gaps().iter().map(|gap| (gap.device, gap.first, gap.last)).collect::<Vec<_>>()
    };
    assert_eq!(gaps_without(&[3]), [(DEVICE, 3, 3)]);
    assert_eq!(gaps_without(&[5]), [(DEVICE, 5, 5)]);
}
