//! The journal as a set of entries, merged by union.

use super::{Coverage, Entry, Gap, JournalFact, Stamp};
use crate::collections::{Table, sort_by_key};
use crate::ids::DeviceId;

/// The entries of all devices. The same entries make the same journal, in whatever order, overlap and
/// repetition they arrive.
#[derive(Clone, Debug, PartialEq)]
pub struct Journal<F> {
    /// For each device, its entries by rising sequence number.
    devices: Table<Vec<Entry<F>>>,
}

/// The result of a merge.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Absorbed {
    /// Number of facts that were new.
    pub new: u64,
    /// Number of facts that were present already.
    pub known: u64,
}

/// Two different facts with the same device and sequence number. A file is forged or damaged, or a device was
/// cloned; accepting either would lose the other.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Conflict {
    /// The device.
    pub device: DeviceId,
    /// The sequence number of both.
    pub seq: u64,
}

impl<F> Default for Journal<F> {
    fn default() -> Self {
        Self { devices: Table::default() }
    }
}

impl<F: JournalFact> Journal<F> {
    /// A journal of these entries.
    ///
    /// # Errors
    /// [`Conflict`] if two different entries have the same device and number.
    pub fn of(entries: Vec<Entry<F>>) -> Result<Self, Conflict> {
        let mut journal = Self::default();
        journal.absorb(entries)?;
        Ok(journal)
    }

    /// Adds entries in any order, overlap and repetition. All or nothing.
    ///
    /// # Errors
    /// [`Conflict`] if an entry differs from the present one with its number; nothing is changed.
    pub fn absorb(&mut self, entries: Vec<Entry<F>>) -> Result<Absorbed, Conflict> {
        let offered = entries.len() as u64;
        let mut arriving = by_device(entries);
        let devices: Vec<DeviceId> = arriving.keys().copied().collect();
        for device in devices {
            let Some(list) = arriving.get_mut(&device) else { continue };
            if !list.is_sorted_by_key(|entry| entry.seq) {
                sort_by_key(list, |entry| entry.seq);
            }
            let same = |pair: &&[Entry<F>]| pair[0].seq == pair[1].seq && pair[0] != pair[1];
            if let Some(pair) = list.windows(2).find(same) {
                return Err(Conflict { device, seq: pair[0].seq });
            }
            list.dedup_by_key(|entry| entry.seq);
            if let Some(seq) = self.devices.get(&device).and_then(|held| disagreement(held, list)) {
                return Err(Conflict { device, seq });
            }
        }
        let mut new = 0;
        for (device, list) in arriving.iter_mut() {
            let held = self.devices.get_or_insert_default(*device);
            let before = held.len();
            merge_sorted(held, std::mem::take(list));
            new += (held.len() - before) as u64;
        }
        Ok(Absorbed { new, known: offered - new })
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

    /// The entries that `known` does not contain.
    pub fn beyond(&self, known: &Coverage) -> Vec<Entry<F>> {
        self.entries().filter(|entry| !known.holds(entry.device, entry.seq)).cloned().collect()
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

/// The first number with different entries in two sorted lists.
fn disagreement<F: JournalFact>(held: &[Entry<F>], arriving: &[Entry<F>]) -> Option<u64> {
    let mut held = held.iter().peekable();
    for entry in arriving {
        while held.next_if(|other| other.seq < entry.seq).is_some() {}
        if held.peek().is_some_and(|other| other.seq == entry.seq && *other != entry) {
            return Some(entry.seq);
        }
    }
    None
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
    use crate::journal::Stamp;
    use crate::time::wall;
    use uuid::Uuid;

    type Entry = crate::journal::Entry<Fact>;
    type Journal = super::Journal<Fact>;

    fn entry(device: u128, seq: u64, unix_ms: u64) -> Entry {
        let fact = Fact::ShopNamed(format!("{device}/{seq}"));
        let stamp = Stamp { wall: wall(unix_ms), counter: 0 };
        Entry { device: Uuid::from_u128(device), seq, stamp, subject: Uuid::nil(), fact }
    }

    #[test]
    fn overlapping_files_merge_to_one_copy_of_each_fact() {
        let mut journal = Journal::of(vec![entry(1, 1, 5), entry(1, 2, 6), entry(2, 1, 1)]).unwrap();
        let report = journal.absorb(vec![entry(1, 3, 9), entry(1, 2, 6), entry(2, 1, 1)]).unwrap();
        assert_eq!(report, Absorbed { new: 1, known: 2 });
        let order: Vec<u64> = journal.in_order().iter().map(|entry| entry.stamp.wall.unix_ms()).collect();
        assert_eq!(order, [1, 5, 6, 9]);
    }

    #[test]
    fn two_facts_with_one_number_change_nothing() {
        let mut journal = Journal::of(vec![entry(1, 1, 5)]).unwrap();
        let before = journal.clone();
        let forged = entry(1, 1, 6);
        let conflict = Conflict { device: Uuid::from_u128(1), seq: 1 };
        assert_eq!(journal.absorb(vec![entry(2, 1, 1), forged.clone()]), Err(conflict));
        assert_eq!(journal, before);
        assert_eq!(Journal::of(vec![entry(1, 1, 5), forged]), Err(conflict));
    }
}
