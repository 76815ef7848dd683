//! Forks: one device id that two devices counted on under.
//!
//! A phone that was cloned, or set back to an older state, gives numbers to facts that other facts already have. No
//! fact is refused and none is lost: from the first number on that two facts have, all facts of the device are filed
//! under ids that are derived from its own, at each number by their stamps: the earliest under the first derived id, the
//! next one under the second. A derived id is thus no device, only a place where numbers are not taken twice.
//!
//! Where a fact is filed follows from nothing but the facts at its number and the first number that two facts have. So
//! whoever has the same facts files them alike: in whatever order and in however many files they arrived, and under
//! whichever of these ids they arrived or are stored. A fact under a derived id shows that somebody has seen two facts at
//! its number or before it; until these arrive, it stands for them. What is stored is not filed again: it is filed so
//! whenever it is read.
//!
//! A known limit: a fork in a file that also lacks lines keeps every fact, but two devices may order the pieces of it
//! differently until they have each other's files.
//!
//! # Decisions
//!
//! - **A cloned device is found at the first merge, not before** (2026-11-29). A mark in local storage beside one in
//!   the database was considered, and it detects nothing. A restored phone or a copied profile carries both. Browsers
//!   delete both together too; where only one is gone, either the database is new and has a new device id anyway, or
//!   the settings are lost and the line goes on as it should. The web gives a page no id of the hardware,
//!   deliberately: ids of media devices and keys that cannot be exported lie in the same profile, and passkeys are
//!   made to be copied. The merge keeps both lines (`journal/fork.rs`).

use super::{Entry, JournalFact};
use crate::codec::Encode;
use crate::collections::sort_by;
use crate::ids::DeviceId;
use std::collections::{BTreeMap, BTreeSet};
use uuid::Uuid;

/// A device id under which two devices counted on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Encode)]
pub struct Fork {
    /// The device; one of the derived ids if it has no facts here.
    pub device: DeviceId,
    /// The first number that two facts have; or a later one, from which on yet more facts have one number.
    pub first: u64,
}

/// What a device id and the ids derived from it share: its last six bytes, which are random.
pub(super) type Family = [u8; 6];

/// The sequence numbers from which the number of conflicting facts of a family grows.
pub(super) type Forks = BTreeSet<u64>;

/// Entries of one id by rising number, each number once.
pub(super) type Branch<F> = (DeviceId, Vec<Entry<F>>);

/// Whether this is a derived id: a UUID of version 8. Devices themselves take ids of version 7.
pub(super) fn is_derived(id: DeviceId) -> bool {
    id.get_version_num() == 8
}

/// The family of an id.
pub(super) fn family_of(id: DeviceId) -> Family {
    let mut family = Family::default();
    family.copy_from_slice(&id.as_bytes()[10..]);
    family
}

/// Whether both are ids of one device, or derived from one.
pub fn is_same_family(one: DeviceId, other: DeviceId) -> bool {
    one == other || family_of(one) == family_of(other)
}

/// The entry as a line, the same whichever id of its family it is filed under.
pub(super) fn line_without_device<F: JournalFact>(entry: &Entry<F>) -> String {
    Entry { device: Uuid::nil(), ..entry.clone() }.to_line()
}

/// A family's derived id of this rank, from 0: of version 8, which leaves all other bits to us.
pub(super) fn derived_id(family: Family, rank: usize) -> DeviceId {
    let mut id = [0; 16];
    id[..6].copy_from_slice(&(rank as u64).to_be_bytes()[2..]);
    id[6] = 0x80;
    id[8] = 0x80;
    id[10..].copy_from_slice(&family);
    Uuid::from_bytes(id)
}

/// Distributes the facts of a forked device over its derived ids. They are given in branches with any of its ids and may
/// be repeated. Returns them with the numbers at which it forks.
pub(super) fn split_by_derived_id<F: JournalFact>(
    family: Family,
    lines: Vec<Branch<F>>,
) -> (BTreeMap<DeviceId, Vec<Entry<F>>>, Forks) {
    let derived = lines.iter().filter(|(id, _)| is_derived(*id));
    let seen_by_others = derived.filter_map(|(_, line)| line.first()).map(|entry| entry.seq).min();
    let mut numbers = BTreeMap::<u64, Vec<Entry<F>>>::new();
    for entry in lines.into_iter().flat_map(|(_, line)| line) {
        let facts = numbers.entry(entry.seq).or_default();
        match facts.iter_mut().find(|held| is_same_fact(held, &entry)) {
            Some(held) => held.device = held.device.min(entry.device),
            None => facts.push(entry),
        }
    }
    let seen_here = numbers.iter().find(|(_, facts)| facts.len() > 1).map(|(number, _)| *number);
    let first = seen_here.into_iter().chain(seen_by_others).min().unwrap_or(u64::MAX);
    let (mut filed, mut forks) = (BTreeMap::<_, Vec<Entry<F>>>::new(), Forks::new());
    let mut before = 1;
    for (number, mut facts) in numbers {
        if number == first || facts.len() > before {
            forks.insert(number);
        }
        before = facts.len();
        if number >= first {
            sort_by(&mut facts, |a, b| {
                a.stamp.cmp(&b.stamp).then_with(|| line_without_device(a).cmp(&line_without_device(b)))
            });
            facts.iter_mut().enumerate().for_each(|(rank, entry)| entry.device = derived_id(family, rank));
        }
        facts.into_iter().for_each(|entry| filed.entry(entry.device).or_default().push(entry));
    }
    (filed, forks)
}

/// Whether both are the same entry but for the id that they are filed under.
fn is_same_fact<F: JournalFact>(one: &Entry<F>, other: &Entry<F>) -> bool {
    one.device == other.device && one.is_same(other) || Entry { device: one.device, ..other.clone() }.is_same(one)
}
