//! The pots that are asked for of all that a shop ever made.

use super::Pot;
use crate::codec::Encode;
use crate::collections::{Groups, Table};
use crate::ids::Subject;
use crate::time::{Newest, WallTime};

/// Most pots kept of which the newest is asked for: some may be deleted. Our own.
const MOST: usize = 8;

/// Which pots are open, and which were made last, kept at each fact: the shelf and a new pot ask.
#[derive(Clone, Debug, PartialEq, Default, Encode)]
pub(super) struct PotLists {
    /// The pots that are neither closed nor deleted.
    pub open: Table<()>,
    /// The newest pots of each revision that have a size, without deleted ones.
    pub sized: Groups<Newest>,
    /// The newest pots that have a capacity, without deleted ones.
    pub vessels: Newest,
}

/// What the lists need to know of a pot. The default is a pot that is not there.
#[derive(Clone, Copy, PartialEq, Default)]
pub(super) struct ListedPot {
    is_open: bool,
    /// The revision it is weighed by and when it was made, if it has both that and a size.
    sized: Option<(Subject, WallTime)>,
    /// When it was made, if it has a capacity.
    vessel: Option<WallTime>,
}

impl ListedPot {
    pub(super) fn of(pot: &Pot) -> Self {
        let made = Some(pot.created).filter(|_| !pot.deleted);
        Self {
            is_open: pot.is_open(),
            sized: pot.revision.zip(made).filter(|_| pot.size.is_some()),
            vessel: made.filter(|_| pot.capacity.is_some()),
        }
    }
}

impl PotLists {
    pub(super) fn pot_changed(&mut self, id: Subject, before: ListedPot, after: ListedPot) {
        match (before.is_open, after.is_open) {
            (false, true) => self.open.insert(id, ()),
            (true, false) => drop(self.open.remove(&id)),
            (true, true) | (false, false) => {}
        }
        self.sized.change(before.sized, after.sized, |pots, was, is| pots.replace_with_limit(MOST, id, was, is));
        self.vessels.replace_with_limit(MOST, id, before.vessel, after.vessel);
    }

    pub(super) fn rows_in_memory(&self) -> usize {
        self.open.rows_in_memory() + self.sized.rows_in_memory()
    }
}
