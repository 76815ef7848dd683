//! Forks: one device id that two devices counted on under.
//!
//! A phone that was cloned, or set back to an older state, gives numbers to facts that other facts already have. No
//! fact is refused and none is lost: from the first number on that differs, each line of facts is filed under an id of
//! its own, which is derived from the device and from the first fact of the line. Whoever sees the same lines derives
//! the same ids, in whatever order they arrive; so the shops converge. What is stored is not filed anew: it is filed
//! so whenever it is read.

use super::{Entry, JournalFact};
use crate::ids::DeviceId;
use sha2::{Digest, Sha256};
use std::collections::{BTreeMap, BTreeSet};
use uuid::Uuid;

/// A device id under which two devices counted on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Fork {
    /// The device; one of the derived ids if it has no facts here.
    pub device: DeviceId,
    /// The first number that two facts have.
    pub first: u64,
}

/// What a device id and the ids derived from it share: its last six bytes, which are random.
pub(super) type Family = [u8; 6];

/// Entries of one id by rising number, each number once.
pub(super) type Line<F> = (DeviceId, Vec<Entry<F>>);

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
pub(super) fn text_of<F: JournalFact>(entry: &Entry<F>) -> String {
    Entry { device: Uuid::nil(), ..entry.clone() }.to_line()
}

/// The id of the line of a family that begins with this entry: from the SHA-256 of the entry as a line.
pub(super) fn derived_id<F: JournalFact>(family: Family, first: &Entry<F>) -> DeviceId {
    let hash: [u8; 32] = Sha256::digest(format!("lastpull fork\n{}", text_of(first)).as_bytes()).into();
    let mut id = [0; 16];
    id[..10].copy_from_slice(&hash[..10]);
    id[10..].copy_from_slice(&family);
    id[6] = id[6] & 0x0f | 0x80;
    id[8] = id[8] & 0x3f | 0x80;
    Uuid::from_bytes(id)
}

/// Files the lines of a forked family under their ids. Every line is cut at each number at which any two differ, so
/// that the pieces do not depend on which two met first. Returns them with the numbers of the cuts.
pub(super) fn filed<F: JournalFact>(family: Family, lines: &[Line<F>]) -> (Vec<Line<F>>, BTreeSet<u64>) {
    let begins =
        |(id, line): &Line<F>| line.first().filter(|first| derived_id(family, first) == *id).map(|first| first.seq);
    let mut cuts: BTreeSet<u64> = lines.iter().filter_map(begins).collect();
    loop {
        match pieces(family, lines, &cuts) {
            Ok(pieces) => {
                let owned = |entry: &Entry<F>, device| Entry { device, ..entry.clone() };
                let filed = pieces.into_iter().map(|(id, piece)| (id, piece.values().map(|e| owned(e, id)).collect()));
                return (filed.collect(), cuts);
            }
            // Each cut is at a number without one, so this ends.
            Err(cut) => drop(cuts.insert(cut)),
        }
    }
}

type Pieces<'a, F> = BTreeMap<DeviceId, BTreeMap<u64, &'a Entry<F>>>;

/// The pieces between the cuts by their ids, or a number that needs a cut.
fn pieces<'a, F: JournalFact>(
    family: Family,
    lines: &'a [Line<F>],
    cuts: &BTreeSet<u64>,
) -> Result<Pieces<'a, F>, u64> {
    let mut pieces = Pieces::new();
    let mut loose = Vec::new();
    for (id, line) in lines {
        let is_whole = |before: &Entry<F>, after: &Entry<F>| cuts.range(before.seq + 1..=after.seq).next().is_none();
        for piece in line.chunk_by(is_whole) {
            let first = &piece[0];
            if cuts.contains(&first.seq) {
                join(&mut pieces, derived_id(family, first), piece)?;
            } else if !is_derived(*id) && cuts.range(..first.seq).next().is_none() {
                join(&mut pieces, *id, piece)?;
            } else {
                loose.push(piece);
            }
        }
    }
    // Pieces whose first fact is missing: what is not in another piece begins a line by itself.
    for piece in loose {
        let is_elsewhere = |entry: &Entry<F>| {
            pieces.values().any(|other| other.get(&entry.seq).is_some_and(|other| is_same_fact(other, entry)))
        };
        if let Some(first) = piece.iter().find(|entry| !is_elsewhere(entry)) {
            return Err(first.seq);
        }
    }
    Ok(pieces)
}

/// Adds entries to the piece of this id.
fn join<'a, F: JournalFact>(pieces: &mut Pieces<'a, F>, id: DeviceId, entries: &'a [Entry<F>]) -> Result<(), u64> {
    let piece = pieces.entry(id).or_default();
    for entry in entries {
        let held = piece.entry(entry.seq).or_insert(entry);
        if !is_same_fact(held, entry) {
            return Err(entry.seq);
        }
    }
    Ok(())
}

/// Whether both are the same entry but for the id that they are filed under.
fn is_same_fact<F: JournalFact>(one: &Entry<F>, other: &Entry<F>) -> bool {
    one.device == other.device && one.is_same(other) || Entry { device: one.device, ..other.clone() }.is_same(one)
}
