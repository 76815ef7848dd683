//! Values of one type by their id.
//!
//! All tables share the code of one untyped index, so that a new type of value adds next to no code to the
//! app; a `BTreeMap` for each of a dozen types was a tenth of the bundle.
//!
//! A table that was decoded keeps its rows as they were stored, and decodes each when somebody asks for it: what opening
//! a shop of ten years costs is a copy of its bytes. Encoded again, rows that nobody changed are copied.

mod index;
mod stored;

use crate::codec::{Encode, Reader, encode_number};
use index::Index;
use std::fmt;
use stored::{Directory, LINE, RowPosition, RowPositions, Stored};
use uuid::Uuid;

/// Values by id, iterated in the order of their ids.
#[derive(Clone)]
pub struct Table<T> {
    index: Index,
    /// The rows that are not as they were stored.
    rows: Vec<(Uuid, T)>,
    /// The rows that are.
    stored: Option<Box<Stored<T>>>,
}

impl<T> Default for Table<T> {
    fn default() -> Self {
        Self { index: Index::default(), rows: Vec::new(), stored: None }
    }
}

impl<T> Table<T> {
    fn place(&self, id: &Uuid) -> Option<RowPosition> {
        match self.stored.as_ref().and_then(|stored| stored.directory.position(id)) {
            Some(position) => Some(RowPosition::Stored(position)),
            None => self.index.position(id).map(RowPosition::Own),
        }
    }

    fn places(&self) -> RowPositions<'_> {
        RowPositions::new(self.stored.as_ref().map(|stored| &stored.directory), &self.index)
    }

    fn at(&self, place: RowPosition) -> Option<&T> {
        match place {
            RowPosition::Stored(position) => self.stored.as_ref().map(|stored| stored.at(position)),
            RowPosition::Own(position) => self.rows.get(position).map(|(_, thing)| thing),
        }
    }

    /// Makes a row with this id the table's own, if it is a stored one.
    fn take_stored(&mut self, id: &Uuid) {
        // What was written lately is its own.
        if self.index.recent(id).is_some() {
            return;
        }
        let Some(stored) = &mut self.stored else { return };
        if let Some(position) = stored.directory.position(id) {
            let thing = stored.take(position);
            self.index.position_or_insert(*id, self.rows.len());
            self.rows.push((*id, thing));
        }
    }

    /// The value of an id.
    pub fn get(&self, id: &Uuid) -> Option<&T> {
        self.at(self.place(id)?)
    }

    /// The value of an id, mutably.
    pub fn get_mut(&mut self, id: &Uuid) -> Option<&mut T> {
        self.take_stored(id);
        self.index.position(id).map(|position| &mut self.rows[position].1)
    }

    /// Whether there is a value with this id.
    pub fn contains_key(&self, id: &Uuid) -> bool {
        self.place(id).is_some()
    }

    /// Number of values.
    pub fn len(&self) -> usize {
        self.rows.len() + self.stored.as_ref().map_or(0, |stored| stored.directory.len())
    }

    /// Whether there are no values.
    pub fn is_empty(&self) -> bool {
        self.len() == 0
    }

    /// Ids and values in the order of the ids. It decodes every row that it comes to.
    pub fn iter(&self) -> impl DoubleEndedIterator<Item = (&Uuid, &T)> + Clone {
        self.places().filter_map(|(id, place)| Some((id, self.at(place)?)))
    }

    /// All ids in order.
    pub fn keys(&self) -> impl DoubleEndedIterator<Item = &Uuid> + Clone {
        self.places().map(|(id, _)| id)
    }

    /// Values in the order of their ids.
    pub fn values(&self) -> impl DoubleEndedIterator<Item = &T> + Clone {
        self.iter().map(|(_, thing)| thing)
    }

    /// The value of an id, inserted if it is not there.
    pub fn get_or_insert_with(&mut self, id: Uuid, thing: impl FnOnce() -> T) -> &mut T {
        self.take_stored(&id);
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
        self.take_stored(&id);
        let position = self.index.position_or_insert(id, self.rows.len());
        match self.rows.get_mut(position) {
            Some(row) => row.1 = thing,
            None => self.rows.push((id, thing)),
        }
    }

    /// Ids and values in the order of the ids.
    pub fn into_rows(mut self) -> impl Iterator<Item = (Uuid, T)> {
        let stored: Vec<Uuid> = self.stored.iter().flat_map(|_| self.keys()).copied().collect();
        stored.iter().for_each(|id| self.take_stored(id));
        crate::collections::sort_by_key(&mut self.rows, |(id, _)| *id);
        self.rows.into_iter()
    }

    /// Removes and returns a value.
    pub fn remove(&mut self, id: &Uuid) -> Option<T> {
        self.take_stored(id);
        let position = self.index.remove(id)?;
        let (_, thing) = self.rows.swap_remove(position);
        if let Some((moved, _)) = self.rows.get(position) {
            self.index.set(*moved, position);
        }
        Some(thing)
    }

    /// Number of rows that were decoded or changed since the table was opened. Tests count them.
    pub fn rows_in_memory(&self) -> usize {
        self.rows.len() + self.stored.as_ref().map_or(0, |stored| stored.decoded())
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

/// Encoded as the number of rows, the directory ([`LINE`] says how), and the bytes of the rows one after the other, all
/// in the order of the ids.
impl<T: Encode> Encode for Table<T> {
    fn encode(&self, out: &mut Vec<u8>) {
        encode_number(self.len() as u64, out);
        let mut line = out.len();
        out.resize(line + self.len() * LINE, 0);
        let rows = out.len();
        for (id, place) in self.places() {
            match (&self.stored, place) {
                (Some(stored), RowPosition::Stored(position)) => out.extend_from_slice(stored.directory.row(position)),
                _ => self.at(place).into_iter().for_each(|thing| thing.encode(out)),
            }
            let end = ((out.len() - rows) as u32).to_le_bytes();
            out[line..line + 16].copy_from_slice(id.as_bytes());
            out[line + 16..line + LINE].copy_from_slice(&end);
            line += LINE;
        }
    }

    fn decode(from: &mut Reader<'_>) -> Self {
        let stored = match from.length() {
            0 => None,
            count => Some(Box::new(Stored::new(Directory::decode(count, from), T::decode))),
        };
        Self { stored, ..Self::default() }
    }
}

impl<T: Encode> Table<T> {
    /// Encodes it as a map in the order of the ids, each with its value.
    pub fn encode_map(&self, out: &mut Vec<u8>) {
        encode_number(self.len() as u64, out);
        for (id, thing) in self.iter() {
            id.encode(out);
            thing.encode(out);
        }
    }

    /// Decodes what [`encode_map`](Self::encode_map) wrote, all of it.
    pub fn decode_map(from: &mut Reader<'_>) -> Self {
        let rows = Vec::<(Uuid, T)>::decode(from);
        let mut table = Self::default();
        for (position, (id, _)) in rows.iter().enumerate() {
            if table.index.position(id).is_some() {
                from.fail();
            }
            table.index.set(*id, position);
        }
        table.rows = rows;
        table
    }
}

#[cfg(test)]
mod tests;
