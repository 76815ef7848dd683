//! A pot: a batch of ink, from the first gram in it to the last.

use crate::codec::Encode;
use crate::facts::{BatchSize, PotField};
use crate::ids::{RunId, Subject};
use crate::time::WallTime;
use crate::units::Grams;

/// A pot, in the state its facts leave it. Its contents are replayed from its ledger.
#[derive(Clone, Debug, PartialEq, Default, Encode)]
pub struct Pot {
    /// The name written on it.
    pub name: String,
    /// The revision it is weighed by.
    pub revision: Option<Subject>,
    /// Size of the batch.
    pub size: Option<BatchSize>,
    /// Capacity.
    pub capacity: Option<Grams>,
    /// Weight of the empty pot; `None` if the scale is zeroed with the pot on it.
    pub tare: Option<Grams>,
    /// The run it is for.
    pub run: Option<RunId>,
    /// Free note.
    pub note: String,
    /// Whether it is closed.
    pub closed: bool,
    /// Wall time of its first fact.
    pub created: WallTime,
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

    /// Whether it is neither deleted nor closed.
    pub fn is_open(&self) -> bool {
        !self.deleted && !self.closed
    }
}
