//! A pot: a batch of ink, from the first gram in it to the last.

use super::BatchSize;
use super::component::is_kept;
use crate::job::RunId;
use crate::journal::Subject;
use crate::journal::fact::{is_name, is_note};
use crate::pack::Pack;
use crate::quantity::Grams;
use serde::{Deserialize, Serialize};

/// A field of a pot. **Frozen** as [`crate::journal::Fact`] is.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Pack)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum PotField {
    /// The name written on it.
    Name(String),
    /// The revision it is weighed by.
    Revision(Option<Subject>),
    /// Size of the batch.
    Size(Option<BatchSize>),
    /// Capacity, filled to where it can still be stirred.
    Capacity(Option<Grams>),
    /// Weight of the empty pot; `None` if the scale is zeroed with the pot on it.
    Tare(Option<Grams>),
    /// The run it is for.
    Run(Option<RunId>),
    /// Free note.
    Note(String),
    /// Whether it is closed: empty and washed out.
    Closed(bool),
}

/// A pot, in the state its facts leave it. Its contents are replayed from its ledger.
#[derive(Clone, Debug, PartialEq, Default, Pack)]
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
    /// Wall time of its first fact, in milliseconds since 1970-01-01 UTC.
    pub created: u64,
    /// Whether it was deleted.
    pub deleted: bool,
}

impl PotField {
    /// As [`crate::journal::Fact::in_bounds`].
    pub(super) fn in_bounds(&self) -> bool {
        match self {
            Self::Name(text) => is_name(text),
            Self::Note(text) => is_note(text),
            Self::Size(size) => size.is_none_or(BatchSize::in_bounds),
            Self::Capacity(weight) | Self::Tare(weight) => weight.is_none_or(is_kept),
            Self::Revision(_) | Self::Run(_) | Self::Closed(_) => true,
        }
    }
}

impl Pot {
    pub(super) fn set(&mut self, field: &PotField) {
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

    pub(super) fn fields(&self) -> Vec<PotField> {
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
