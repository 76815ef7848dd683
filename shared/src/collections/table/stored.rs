//! Rows as they were stored: a row is decoded when somebody first asks for it, and one that nobody asks for costs
//! nothing but its bytes.

use super::index::Index;
use crate::codec::Reader;
use std::collections::btree_map::Iter;
use std::ops::Range;
use std::sync::OnceLock;
use uuid::Uuid;

/// Bytes of one line of a directory: the id, and where the row ends among the bytes of all rows, as `u32` with the
/// lowest byte first. A row begins where the one before it ends.
pub(super) const LINE: usize = 20;

/// The stored rows of one table.
#[derive(Clone)]
pub(super) struct Stored<T> {
    pub(super) directory: Directory,
    rows: Vec<OnceLock<Box<T>>>,
    decode: fn(&mut Reader<'_>) -> T,
}

/// Where each stored row is, in the order of the ids: everything that is done with stored rows without knowing their
/// type.
#[derive(Clone)]
pub(super) struct Directory {
    lines: Vec<u8>,
    bytes: Vec<u8>,
    /// Whether each row has left: it was changed, and is now among the table's own, or was removed.
    left: Vec<bool>,
    /// Number of rows that have not left.
    here: usize,
}

impl Directory {
    /// Reads the directory of so many rows, and their bytes. The reader fails if the ids are not in order, or the rows
    /// not within their bytes.
    pub(super) fn decode(count: usize, from: &mut Reader<'_>) -> Self {
        let lines = from.bytes(count.saturating_mul(LINE)).to_vec();
        let mut directory = Self { lines, bytes: Vec::new(), left: Vec::new(), here: 0 };
        let (mut last, mut end) = (None, 0);
        for line in directory.lines.chunks_exact(LINE) {
            let (id, ends) = read(line);
            if last >= Some(id) || ends < end {
                from.fail();
            }
            (last, end) = (Some(id), ends);
        }
        directory.bytes = from.bytes(end).to_vec();
        // Where the reader failed there are fewer lines than that.
        directory.here = directory.lines.len() / LINE;
        directory.left = vec![false; directory.here];
        directory
    }

    /// Number of rows that have not left.
    pub(super) fn len(&self) -> usize {
        self.here
    }

    #[inline(never)]
    pub(super) fn position(&self, id: &Uuid) -> Option<usize> {
        let (mut low, mut high) = (0, self.left.len());
        while low < high {
            let middle = low.midpoint(high);
            if self.id(middle) < id { low = middle + 1 } else { high = middle }
        }
        (low < self.left.len() && !self.left[low] && self.id(low) == id).then_some(low)
    }

    fn leave(&mut self, position: usize) {
        self.left[position] = true;
        self.here -= 1;
    }

    fn line(&self, position: usize) -> &[u8] {
        self.lines.get(position * LINE..).unwrap_or_default()
    }

    pub(super) fn id(&self, position: usize) -> &Uuid {
        self.line(position).first_chunk().map_or(const { &Uuid::nil() }, Uuid::from_bytes_ref)
    }

    /// The bytes of a row.
    pub(super) fn row(&self, position: usize) -> &[u8] {
        let begin = position.checked_sub(1).map_or(0, |before| read(self.line(before)).1);
        self.bytes.get(begin..read(self.line(position)).1).unwrap_or_default()
    }
}

/// The id in a line, and where its row ends.
fn read(line: &[u8]) -> (u128, usize) {
    let id = line.first_chunk().map_or(0, |id| u128::from_be_bytes(*id));
    let end = line.get(16..).and_then(<[u8]>::first_chunk).map_or(0, |end| u32::from_le_bytes(*end));
    (id, end as usize)
}

impl<T> Stored<T> {
    pub(super) fn new(directory: Directory, decode: fn(&mut Reader<'_>) -> T) -> Self {
        let rows = directory.left.iter().map(|_| OnceLock::new()).collect();
        Self { directory, rows, decode }
    }

    /// The row at a position.
    pub(super) fn at(&self, position: usize) -> &T {
        self.rows[position].get_or_init(|| Box::new((self.decode)(&mut Reader::of(self.directory.row(position)))))
    }

    /// Takes out a row.
    pub(super) fn take(&mut self, position: usize) -> T {
        self.directory.leave(position);
        let taken = self.rows[position].take();
        taken.map_or_else(|| (self.decode)(&mut Reader::of(self.directory.row(position))), |row| *row)
    }

    /// Number of rows that were decoded and have not left.
    pub(super) fn decoded(&self) -> usize {
        self.rows.iter().filter(|row| row.get().is_some()).count()
    }
}

/// Where a row of a table is.
#[derive(Clone, Copy)]
pub(super) enum RowPosition {
    /// Among the stored rows.
    Stored(usize),
    /// Among the table's own.
    Own(usize),
}

/// The ids of stored rows and a table's own, in order.
#[derive(Clone)]
pub(super) struct RowPositions<'a> {
    directory: Option<&'a Directory>,
    stored: Range<usize>,
    own: Iter<'a, Uuid, u32>,
}

impl<'a> RowPositions<'a> {
    pub(super) fn new(directory: Option<&'a Directory>, own: &'a Index) -> Self {
        let stored = 0..directory.map_or(0, |directory| directory.left.len());
        Self { directory, stored, own: own.iter() }
    }

    /// The stored row at an end of those left, if there is one, passing over rows that have left.
    fn stored(&mut self, at: fn(&Range<usize>) -> usize, step: fn(&mut Range<usize>)) -> Option<(&'a Uuid, usize)> {
        let directory = self.directory?;
        while !self.stored.is_empty() {
            let position = at(&self.stored);
            if !directory.left[position] {
                return Some((directory.id(position), position));
            }
            step(&mut self.stored);
        }
        None
    }
}

fn own<'a>((id, position): (&'a Uuid, &'a u32)) -> (&'a Uuid, RowPosition) {
    (id, RowPosition::Own(*position as usize))
}

impl<'a> Iterator for RowPositions<'a> {
    type Item = (&'a Uuid, RowPosition);

    #[inline(never)]
    fn next(&mut self) -> Option<Self::Item> {
        let step = |stored: &mut Range<usize>| stored.start += 1;
        let Some((id, position)) = self.stored(|stored| stored.start, step) else { return self.own.next().map(own) };
        if self.own.len() > 0 && self.own.clone().next().is_some_and(|(other, _)| other < id) {
            return self.own.next().map(own);
        }
        step(&mut self.stored);
        Some((id, RowPosition::Stored(position)))
    }
}

impl DoubleEndedIterator for RowPositions<'_> {
    #[inline(never)]
    fn next_back(&mut self) -> Option<Self::Item> {
        let step = |stored: &mut Range<usize>| stored.end -= 1;
        let Some((id, position)) = self.stored(|stored| stored.end - 1, step) else {
            return self.own.next_back().map(own);
        };
        if self.own.len() > 0 && self.own.clone().next_back().is_some_and(|(other, _)| other > id) {
            return self.own.next_back().map(own);
        }
        step(&mut self.stored);
        Some((id, RowPosition::Stored(position)))
    }
}
