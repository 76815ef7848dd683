//! The position of each id in the rows of a table: everything it does with them without knowing their type.

use std::collections::BTreeMap;
use std::collections::btree_map::Iter;
use uuid::Uuid;

/// The position of each id in the rows.
#[derive(Clone, Default)]
pub(super) struct Index {
    positions: BTreeMap<Uuid, u32>,
    /// Recently written ids, each in the slot of its last bits; empty until the first write. Facts come in
    /// batches about one subject, from a few devices.
    recent: Vec<Option<(Uuid, u32)>>,
}

/// Number of recent ids.
const RECENT: usize = 16;

impl Index {
    #[inline(never)]
    pub(super) fn position(&self, id: &Uuid) -> Option<usize> {
        self.positions.get(id).map(|position| *position as usize)
    }

    /// The position of an id among those recently written.
    #[inline(never)]
    pub(super) fn recent(&self, id: &Uuid) -> Option<usize> {
        match self.recent.get(slot(id)) {
            Some(Some((other, position))) if other == id => Some(*position as usize),
            _ => None,
        }
    }

    /// The position of an id; `new` if it is not there yet.
    #[inline(never)]
    pub(super) fn position_or_insert(&mut self, id: Uuid, new: usize) -> usize {
        if let Some(position) = self.recent(&id) {
            return position;
        }
        let position = *self.positions.entry(id).or_insert(new as u32);
        self.recent.resize(RECENT, None);
        self.recent[slot(&id)] = Some((id, position));
        position as usize
    }

    /// Removes an id. Another row moves to its position, so the recent positions are cleared.
    pub(super) fn remove(&mut self, id: &Uuid) -> Option<usize> {
        self.recent.clear();
        self.positions.remove(id).map(|position| position as usize)
    }

    /// Says that the row of this id moved.
    pub(super) fn set(&mut self, id: Uuid, position: usize) {
        self.positions.insert(id, position as u32);
    }

    /// Ids and positions in the order of the ids.
    pub(super) fn iter(&self) -> Iter<'_, Uuid, u32> {
        self.positions.iter()
    }
}

fn slot(id: &Uuid) -> usize {
    usize::from(id.as_bytes()[15]) % RECENT
}
