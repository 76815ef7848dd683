//! A pot: a batch of ink, from the first gram in it to the last.

use crate::codec::Encode;
use crate::facts::{BatchSize, PotField};
use crate::ids::{RunId, Subject};
use crate::units::Grams;

/// A pot, as the facts about it leave it. What is in it is the replay of its ledger.
#[derive(Clone, Debug, PartialEq, Default, Encode)]
pub struct Pot {
    /// What is written on it.
    pub name: String,
    /// The revision it is weighed by.
    pub revision: Option<Subject>,
    /// How much of it.
    pub size: Option<BatchSize>,
    /// How much it holds.
    pub capacity: Option<Grams>,
    /// What it weighs empty; none where the scale is zeroed with the pot on it.
    pub tare: Option<Grams>,
    /// The run it is for.
    pub run: Option<RunId>,
    /// Anything else.
    pub note: String,
    /// Whether it is done with.
    pub closed: bool,
    /// Wall time of its first fact.
    pub created: u64,
    /// Whether it was deleted.
    pub deleted: bool,
}

impl Pot {
    pub(crate) fn set(&mut self, field: &PotField) {
        match field {
            PotField::Name(name) => self.name.clone_from(name),
            PotField::Revision(revision) => self.revision = *revision,
            PotField::Size(size) => self.size = *size,
            PotField::Capacity(weight) => self.capacity = *weight,
            PotField::Tare(weight) => self.tare = *weight,
            PotField::Run(run) => self.run = *run,
            PotField::Note(note) => self.note.clone_from(note),
            PotField::Closed(closed) => self.closed = *closed,
        }
    }

    pub(crate) fn fields(&self) -> Vec<PotField> {
        vec![
            PotField::Name(self.name.clone()),
            PotField::Revision(self.revision),
            PotField::Size(self.size),
            PotField::Capacity(self.capacity),
            PotField::Tare(self.tare),
            PotField::Run(self.run),
            PotField::Note(self.note.clone()),
            PotField::Closed(self.closed),
        ]
    }

    /// Whether it stands in the shop.
    pub fn is_open(&self) -> bool {
        !self.deleted && !self.closed
    }
}
