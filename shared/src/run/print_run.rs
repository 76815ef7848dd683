//! The run itself, as the facts about it leave it.

use super::{CheckItem, CheckRecord, Location, Progress, SetUp};
use crate::ink::Colour;
use crate::job::LotId;
use crate::journal::RunField;
use crate::quantity::Seconds;
use crate::sorted::Map;
use serde::{Deserialize, Serialize};

/// One lot at one location in one ink.
#[derive(Clone, Debug, PartialEq, Default, Serialize, Deserialize)]
pub struct Run {
    /// The lot it prints on; none until that fact has arrived.
    pub lot: Option<LotId>,
    /// Where on the garment.
    pub location: Location,
    /// The ink's name.
    pub ink: String,
    /// The ink's colour.
    pub ink_colour: Option<Colour>,
    /// How it is to be printed.
    pub set_up: SetUp,
    /// The printer's guess of a piece's time.
    pub guess: Option<Seconds>,
    /// The checks made before the first pull.
    pub checks: Map<CheckItem, CheckRecord>,
    /// What was pulled, spoiled and stopped.
    pub progress: Progress,
    /// Its first fact's place among all facts.
    pub rank: u64,
    /// Wall time of its first fact.
    pub created: u64,
    /// Whether it was deleted.
    pub deleted: bool,
}

impl Run {
    pub(crate) fn set(&mut self, field: &RunField) {
        match field {
            RunField::Lot(lot) => self.lot = Some(*lot),
            RunField::Location(location) => self.location = *location,
            RunField::Ink(ink) => self.ink.clone_from(ink),
            RunField::InkColour(colour) => self.ink_colour = Some(*colour),
            RunField::Guess(guess) => self.guess = *guess,
            set_up => {
                self.set_up.set(set_up);
            }
        }
    }
}
