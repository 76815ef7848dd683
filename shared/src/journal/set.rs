//! The journal as a set of entries, merged by union.

use super::fork::{Branch, Family, derived_id, family_of, is_derived, line_without_device, split_by_derived_id};
use super::{Coverage, Entry, Fork, Gap, JournalFact, Stamp, TooMany};
use crate::collections::{Table, sort_by_key};
use crate::ids::DeviceId;
use std::collections::{BTreeMap, BTreeSet};

/// The entries of all devices. The same entries make the same journal, in whatever order, overlap and
/// repetition they arrive.
#[derive(Clone, Debug, PartialEq)]
pub struct Journal<F> {
    /// For each device, its entries by rising sequence number.
    devices: Table<Vec<Entry<F>>>,
    /// The numbers at which each forked family forks.
    forks: BTreeSet<(Family, u64)>,
}

/// The result of a merge.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Absorbed {
    /// Number of facts that were new.
    pub new: u64,
    /// Number of facts that were present already.
    pub known: u64,
    /// Forks that were found: two facts had one number, and both were kept.
    pub forks: Vec<Fork>,
}

impl<F> Default for Journal<F> {
    fn default() -> Self {
        Self { devices: Table::default(), forks: BTreeSet::new() }
    }
}

impl<F: JournalFact> Journal<F> {
    /// A journal of these entries, as a file holds them.
    ///
    /// # Errors
    /// [`TooMany`] if it has more devices or gaps than a shop can have.
    pub fn of(entries: Vec<Entry<F>>) -> Result<Self, TooMany> {
        let mut journal = Self::default();
        journal.absorb(entries)?;
        Ok(journal)
    }

    /// The journal of the entries that this device has stored. What is stored is never refused.
    pub fn stored(entries: Vec<Entry<F>>) -> Self {
        let mut journal = Self::default();
        journal.add(entries);
        journal
    }

    /// Adds entries in any order, overlap and repetition. Facts that were stored as unknown and are known to this
    /// version are read. If two facts have one number, both are kept, each under an id of its own.
    ///
    /// # Errors
    /// [`TooMany`] if there would be more devices or gaps than a shop can have; nothing is changed.
    pub fn absorb(&mut self, entries: Vec<Entry<F>>) -> Result<Absorbed, TooMany> {
        let mut coverage = self.coverage();
        coverage.add_all(&entries);
        coverage.check_bounds()?;
        Ok(self.add(entries))
    }

    fn add(&mut self, entries: Vec<Entry<F>>) -> Absorbed {
        let offered = entries.len() as u64;
        let before = self.len() as u64;
        let mut lines = Vec::new();
        for (device, list) in by_device(entries.into_iter().map(Entry::recognized).collect()).into_rows() {
            lines.extend(without_repetition(device, list));
        }
        let mut families = self.forked_families(&lines);
        for (device, line) in lines {
            match families.get_mut(&family_of(device)) {
                Some(lines) => lines.push((device, line)),
                None => merge_sorted(self.devices.get_or_insert_default(device), line),
            }
        }
        let forks = families.into_iter().flat_map(|(family, lines)| self.assign_derived_ids(family, lines)).collect();
        let new = (self.len() as u64).saturating_sub(before);
        Absorbed { new, known: offered - new.min(offered), forks }
    }

    /// The forked families that arriving lines are of, or that they fork; to be filled with their lines.
    fn forked_families(&self, arriving: &[Branch<F>]) -> BTreeMap<Family, Vec<Branch<F>>> {
        let disagrees = |(id, line): &&Branch<F>| self.devices.get(id).is_some_and(|held| disagree(held, line));
        // Two lines of one id are a file that contradicts itself.
        let twice = arriving.windows(2).filter(|pair| pair[0].0 == pair[1].0).map(|pair| pair[0].0);
        let forked = arriving.iter().filter(|line| is_derived(line.0) || disagrees(line)).map(|(id, _)| *id);
        let here = self.devices.keys().copied().filter(|id| is_derived(*id));
        forked.chain(twice).chain(here).map(|id| (family_of(id), Vec::new())).collect()
    }

    /// Files arriving lines of a forked family, with those that are here. Returns the forks that were not known.
    fn assign_derived_ids(&mut self, family: Family, mut lines: Vec<Branch<F>>) -> Vec<Fork> {
        if lines.is_empty() {
            return Vec::new();
        }
        let here: Vec<DeviceId> = self.devices.keys().copied().filter(|id| family_of(*id) == family).collect();
        lines.extend(here.into_iter().filter_map(|id| self.devices.remove(&id).map(|line| (id, line))));
        let device = lines.iter().map(|(id, _)| *id).min_by_key(|id| (is_derived(*id), *id)).unwrap_or_default();
        let (lines, forks) = split_by_derived_id(family, lines);
        for (id, line) in lines {
            self.devices.insert(id, line);
        }
        let of_family = (family, 0)..=(family, u64::MAX);
        let known: BTreeSet<u64> = self.forks.range(of_family).map(|(_, first)| *first).collect();
        self.forks.retain(|(other, _)| *other != family);
        self.forks.extend(forks.iter().map(|first| (family, *first)));
        forks.difference(&known).map(|first| Fork { device, first: *first }).collect()
    }

    /// Whether two devices counted on under this id.
    pub fn is_forked(&self, device: DeviceId) -> bool {
        self.is_forked_family(family_of(device))
    }

    fn is_forked_family(&self, family: Family) -> bool {
        self.forks.range((family, 0)..=(family, u64::MAX)).next().is_some()
    }

    /// Whether there is any fork.
    pub fn has_forks(&self) -> bool {
        !self.forks.is_empty()
    }

    /// The entries that `known` does not contain. For a journal without forks.
    pub fn beyond(&self, known: &Coverage) -> Vec<Entry<F>> {
        self.entries().filter(|entry| !known.holds(entry.device, entry.seq)).cloned().collect()
    }

    /// The entries that are not stored yet under any id of their device. If another entry is stored under the derived id
    /// of one, it gets a derived id that has no entry with its number; the fold does not depend on which.
    pub fn beyond_stored(&self, stored: &[Entry<F>]) -> Vec<Entry<F>> {
        let mut coverage = Coverage::default();
        coverage.add_all(stored);
        let is_forked = |entry: &&Entry<F>| self.is_forked(entry.device);
        let texts: BTreeSet<(Family, String)> = stored
            .iter()
            .filter(is_forked)
            .map(|entry| (family_of(entry.device), line_without_device(entry)))
            .collect();
        let mut added = Vec::new();
        for entry in self.entries() {
            let (family, mut device) = (family_of(entry.device), entry.device);
            let is_stored = if self.is_forked_family(family) {
                texts.contains(&(family, line_without_device(entry)))
            } else {
                coverage.holds(device, entry.seq)
            };
            if is_stored {
                continue;
            }
            let mut ranks = 0..;
            while coverage.holds(device, entry.seq)
                && let Some(rank) = ranks.next()
            {
                device = derived_id(family, rank);
            }
            coverage.add(device, entry.seq);
            added.push(Entry { device, ..entry.clone() });
        }
        added
    }

    /// Every entry in fold order: by stamp, then device, then number.
    pub fn in_order(&self) -> Vec<&Entry<F>> {
        let mut keyed: Vec<(Stamp, &Entry<F>)> = Vec::with_capacity(self.len());
        for list in self.devices.values() {
            keyed.extend(list.iter().map(|entry| (entry.stamp, entry)));
        }
        // The sort is stable and the lists are by device and number already, so ties come out right. Each is
        // nearly in order by stamp too, and the standard sort merges such runs.
        keyed.sort_by_key(|(stamp, _)| *stamp);
        keyed.into_iter().map(|(_, entry)| entry).collect()
    }

    /// Every entry by device and rising number.
    pub fn entries(&self) -> impl Iterator<Item = &Entry<F>> {
        self.devices.values().flatten()
    }

    /// Which facts are present.
    pub fn coverage(&self) -> Coverage {
        let mut coverage = Coverage::default();
        coverage.add_all(self.entries());
        coverage
    }

    /// Ranges of missing facts.
    pub fn gaps(&self) -> Vec<Gap> {
        self.coverage().gaps()
    }

    /// Number of entries.
    pub fn len(&self) -> usize {
        self.devices.values().map(Vec::len).sum()
    }

    /// Whether there are no entries.
    pub fn is_empty(&self) -> bool {
        self.devices.is_empty()
    }
}

/// Groups entries by device. A file of one device, the common case, is not copied.
fn by_device<F: JournalFact>(entries: Vec<Entry<F>>) -> Table<Vec<Entry<F>>> {
    let mut devices = Table::<Vec<Entry<F>>>::default();
    let Some(first) = entries.first().map(|entry| entry.device) else { return devices };
    if entries.iter().all(|entry| entry.device == first) {
        devices.insert(first, entries);
        return devices;
    }
    // Files contain one device's facts after another's: look the device up once per range.
    let mut rest = entries.into_iter().peekable();
    while let Some(first) = rest.next() {
        let device = first.device;
        let list = devices.get_or_insert_default(device);
        list.push(first);
        while let Some(entry) = rest.next_if(|entry| entry.device == device) {
            list.push(entry);
        }
    }
    devices
}

/// A device's entries in lines without repeated numbers: one line, unless two different entries have one number.
fn without_repetition<F: JournalFact>(device: DeviceId, mut list: Vec<Entry<F>>) -> Vec<Branch<F>> {
    if !list.is_sorted_by_key(|entry| entry.seq) {
        sort_by_key(&mut list, |entry| entry.seq);
    }
    if list.windows(2).all(|pair| pair[0].seq < pair[1].seq) {
        return vec![(device, list)];
    }
    let mut lines: Vec<Branch<F>> = Vec::new();
    for entry in list {
        let fits = |line: &&mut Branch<F>| line.1.last().is_none_or(|last| last.seq < entry.seq);
        let is_here =
            |line: &Branch<F>| line.1.last().is_some_and(|last| last.seq == entry.seq && last.is_same(&entry));
        if lines.iter().any(is_here) {
            continue;
        }
        match lines.iter_mut().find(fits) {
            Some(line) => line.1.push(entry),
            None => lines.push((device, vec![entry])),
        }
    }
    lines
}

/// Whether two sorted lists have different entries under one number.
fn disagree<F: JournalFact>(held: &[Entry<F>], arriving: &[Entry<F>]) -> bool {
    let mut held = held.iter().peekable();
    arriving.iter().any(|entry| {
        while held.next_if(|other| other.seq < entry.seq).is_some() {}
        held.peek().is_some_and(|other| other.seq == entry.seq && !other.is_same(entry))
    })
}

/// Merges a sorted list into another; for numbers in both, the present entry is kept.
fn merge_sorted<F: JournalFact>(held: &mut Vec<Entry<F>>, arriving: Vec<Entry<F>>) {
    if held.is_empty() {
        *held = arriving;
        return;
    }
    let in_front = |list: &[Entry<F>]| list.first().map(|entry| entry.seq);
    if held.last().map(|entry| entry.seq) < in_front(&arriving) {
        held.extend(arriving);
        return;
    }
    let mut merged = Vec::with_capacity(held.len() + arriving.len());
    let mut left = std::mem::take(held).into_iter().peekable();
    for entry in arriving {
        while let Some(other) = left.next_if(|other| other.seq < entry.seq) {
            merged.push(other);
        }
        if left.peek().is_none_or(|other| other.seq != entry.seq) {
            merged.push(entry);
        }
    }
    merged.extend(left);
    *held = merged;
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::facts::Fact;
    use crate::ids::SHOP;
    use crate::journal::Stamp;
    use crate::time::wall;
    use uuid::Uuid;

    type Entry = crate::journal::Entry<Fact>;
    type Journal = super::Journal<Fact>;

    fn entry(device: u128, seq: u64, unix_ms: u64) -> Entry {
        let fact = Fact::ShopNamed(format!("{device}/{seq}"));
        let stamp = Stamp { wall: wall(unix_ms), counter: 0 };
        Entry { device: Uuid::from_u128(device), seq, stamp, at: stamp.wall, subject: SHOP, fact }
    }

    #[test]
    fn overlapping_files_merge_to_one_copy_of_each_fact() {
        let mut journal = Journal::of(vec![entry(1, 1, 5), entry(1, 2, 6), entry(2, 1, 1)]).unwrap();
        let report = journal.absorb(vec![entry(1, 3, 9), entry(1, 2, 6), entry(2, 1, 1)]).unwrap();
        assert_eq!(report, Absorbed { new: 1, known: 2, forks: vec![] });
        let order: Vec<u64> = journal.in_order().iter().map(|entry| entry.stamp.wall.unix_ms()).collect();
        assert_eq!(order, [1, 5, 6, 9]);
    }

    #[test]
    fn two_facts_with_one_number_are_both_kept() {
        let [one, other] = [entry(1, 1, 5), entry(1, 1, 6)];
        let mut journal = Journal::of(vec![one.clone()]).unwrap();
        let absorbed = journal.absorb(vec![entry(2, 1, 1), other.clone()]).unwrap();
        assert_eq!((absorbed.new, absorbed.known), (2, 0));
        assert_eq!(absorbed.forks, [Fork { device: Uuid::from_u128(1), first: 1 }]);
        assert!(journal.is_forked(Uuid::from_u128(1)));
        let order: Vec<u64> = journal.in_order().iter().map(|entry| entry.at.unix_ms()).collect();
        assert_eq!(order, [1, 5, 6]);
        assert_eq!(journal.absorb(vec![other, one]).unwrap(), Absorbed { new: 0, known: 2, forks: vec![] });
        assert_eq!(journal.gaps(), []);
    }
}
