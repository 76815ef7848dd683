//! Values of one type by their id.
//!
//! All tables share the code of one untyped index, so that a new type of value adds next to no code to the
//! app; a `BTreeMap` for each of a dozen types was a tenth of the bundle. Unlike [`crate::sorted::Map`], a
//! table may grow without bound.

use crate::codec::{Encode, Reader, encode_number};
use std::collections::BTreeMap;
use std::fmt;
use uuid::Uuid;

/// Values by id, iterated in the order of their ids.
#[derive(Clone)]
pub struct Table<T> {
    index: Index,
    rows: Vec<(Uuid, T)>,
}

/// The position of each id in the rows: everything a table does without knowing its type of value.
#[derive(Clone, Default)]
struct Index {
    positions: BTreeMap<Uuid, u32>,
    /// Recently written ids, each in the slot of its last bits; empty until the first write. Facts come in
    /// batches about one subject, from a few devices.
    recent: Vec<Option<(Uuid, u32)>>,
}

/// Number of recent ids.
const RECENT: usize = 16;

impl Index {
    #[inline(never)]
    fn position(&self, id: &Uuid) -> Option<usize> {
        self.positions.get(id).map(|position| *position as usize)
    }

    /// The position of an id; `new` if it is not there yet.
    #[inline(never)]
    fn position_or_insert(&mut self, id: Uuid, new: usize) -> usize {
        self.recent.resize(RECENT, None);
        let recent = &mut self.recent[usize::from(id.as_bytes()[15]) % RECENT];
        match recent {
            Some((other, position)) if *other == id => *position as usize,
            _ => {
                let position = *self.positions.entry(id).or_insert(new as u32);
                *recent = Some((id, position));
                position as usize
            }
        }
    }

    /// Removes an id. Another row moves to its position, so the recent positions are cleared.
    fn remove(&mut self, id: &Uuid) -> Option<usize> {
        self.recent.clear();
        self.positions.remove(id).map(|position| position as usize)
    }
}

impl<T> Default for Table<T> {
    fn default() -> Self {
        Self { index: Index::default(), rows: Vec::new() }
    }
}

impl<T> Table<T> {
    fn position(&self, id: &Uuid) -> Option<usize> {
        self.index.position(id)
    }

    /// The value of an id.
    pub fn get(&self, id: &Uuid) -> Option<&T> {
        self.position(id).map(|position| &self.rows[position].1)
    }

    /// The value of an id, mutably.
    pub fn get_mut(&mut self, id: &Uuid) -> Option<&mut T> {
        self.position(id).map(|position| &mut self.rows[position].1)
    }

    /// Whether there is a value with this id.
    pub fn contains_key(&self, id: &Uuid) -> bool {
        self.position(id).is_some()
    }

    /// Number of values.
    pub fn len(&self) -> usize {
        self.rows.len()
    }

    /// Whether there are no values.
    pub fn is_empty(&self) -> bool {
        self.rows.is_empty()
    }

    /// Ids and values in the order of the ids.
    pub fn iter(&self) -> impl DoubleEndedIterator<Item = (&Uuid, &T)> + Clone {
        self.index.positions.iter().map(|(id, position)| (id, &self.rows[*position as usize].1))
    }

    /// All ids in order.
    pub fn keys(&self) -> impl DoubleEndedIterator<Item = &Uuid> + Clone {
        self.index.positions.keys()
    }

    /// Values in the order of their ids.
    pub fn values(&self) -> impl DoubleEndedIterator<Item = &T> + Clone {
        self.iter().map(|(_, thing)| thing)
    }

    /// Ids and mutable values, in no particular order.
    pub fn iter_mut(&mut self) -> impl Iterator<Item = (&Uuid, &mut T)> {
        self.rows.iter_mut().map(|(id, thing)| (&*id, thing))
    }

    /// The value of an id, inserted if it is not there.
    pub fn get_or_insert_with(&mut self, id: Uuid, thing: impl FnOnce() -> T) -> &mut T {
        let position = self.index.position_or_insert(id, self.rows.len());
        if position == self.rows.len() {
            self.rows.push((id, thing()));
        }
        &mut self.rows[position].1
    }

    /// The value of an id, inserted as the default if it is not there.
    pub fn get_or_insert_default(&mut self, id: Uuid) -> &mut T
    where
        T: Default,
    {
        self.get_or_insert_with(id, T::default)
    }

    /// Inserts a value, replacing the one of the same id.
    pub fn insert(&mut self, id: Uuid, thing: T) {
        let position = self.index.position_or_insert(id, self.rows.len());
        match self.rows.get_mut(position) {
            Some(row) => row.1 = thing,
            None => self.rows.push((id, thing)),
        }
    }

    /// Ids and values in the order of the ids.
    pub fn into_rows(mut self) -> impl Iterator<Item = (Uuid, T)> {
        crate::collections::sort_by_key(&mut self.rows, |(id, _)| *id);
        self.rows.into_iter()
    }

    /// Removes and returns a value.
    pub fn remove(&mut self, id: &Uuid) -> Option<T> {
        let position = self.index.remove(id)?;
        let (_, thing) = self.rows.swap_remove(position);
        if let Some((moved, _)) = self.rows.get(position) {
            self.index.positions.insert(*moved, position as u32);
        }
        Some(thing)
    }
}

impl<T: PartialEq> PartialEq for Table<T> {
    fn eq(&self, other: &Self) -> bool {
        self.iter().eq(other.iter())
    }
}

impl<T: Eq> Eq for Table<T> {}

impl<T: fmt::Debug> fmt::Debug for Table<T> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_map().entries(self.iter()).finish()
    }
}

/// Encoded as a map in the order of the ids.
impl<T: Encode> Encode for Table<T> {
    fn encode(&self, out: &mut Vec<u8>) {
        encode_number(self.rows.len() as u64, out);
        for (id, thing) in self.iter() {
            id.encode(out);
            thing.encode(out);
        }
    }

    fn decode(from: &mut Reader<'_>) -> Self {
        let rows = Vec::<(Uuid, T)>::decode(from);
        let mut table = Self::default();
        for (position, (id, _)) in rows.iter().enumerate() {
            if table.index.positions.insert(*id, position as u32).is_some() {
                from.fail();
            }
        }
        table.rows = rows;
        table
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::codec::{from_bytes, to_bytes};

    fn id(n: u128) -> Uuid {
        Uuid::from_u128(n)
    }

    #[test]
    fn a_table_matches_btreemap_in_content_order_and_bytes() {
        let (mut ours, mut theirs) = (Table::default(), BTreeMap::new());
        for (n, word) in [(5, "five"), (1, "one"), (9, "nine"), (5, "fife"), (3, "three")] {
            ours.insert(id(n), word.to_owned());
            theirs.insert(id(n), word.to_owned());
        }
        assert_eq!(ours.remove(&id(1)), theirs.remove(&id(1)));
        assert_eq!(ours.remove(&id(4)), None);
        ours.get_or_insert_default(id(4)).push('!');
        theirs.entry(id(4)).or_default().push('!');
        // Its position changed when another row was removed.
        ours.insert(id(3), "drei".to_owned());
        theirs.insert(id(3), "drei".to_owned());
        assert!(ours.iter().eq(theirs.iter()));
        for n in 0..10 {
            assert_eq!(ours.get(&id(n)), theirs.get(&id(n)));
        }
        let bytes = to_bytes(&ours);
        assert_eq!(bytes, postcard::to_allocvec(&theirs).unwrap());
        assert_eq!(from_bytes::<Table<String>>(&bytes), Some(ours));
    }

    #[test]
    fn a_duplicate_id_fails_to_decode() {
        let mut bytes = vec![2];
        for _ in 0..2 {
            id(7).encode(&mut bytes);
            1u32.encode(&mut bytes);
        }
        assert_eq!(from_bytes::<Table<u32>>(&bytes), None);
    }
}
