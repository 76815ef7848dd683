//! The state of a run, folded from its facts.

use super::{CheckRecord, Progress, SetUp};
use crate::codec::Encode;
use crate::colour::Colour;
use crate::deletion::deletable;
use crate::facts::{CheckItem, Location, RunField};
use crate::ids::LotId;
use crate::time::WallTime;
use crate::units::Seconds;
use std::collections::BTreeMap;

/// A run: one lot at one location in one ink.
#[derive(Clone, Debug, PartialEq, Default, Encode)]
pub struct Run {
    /// The lot it prints on; `None` until that fact has arrived.
    pub lot: Option<LotId>,
    /// Print location.
    pub location: Location,
    /// The ink's name.
    pub ink: String,
    /// The ink's colour.
    pub ink_colour: Option<Colour>,
    /// How it is set up.
    pub set_up: SetUp,
    /// The printer's guess of the time per piece.
    pub guess: Option<Seconds>,
    /// The latest check of each item before the first pull.
    pub checks: BTreeMap<CheckItem, CheckRecord>,
    /// Counts, misprints and stops.
    pub progress: Progress,
    /// Index of its first fact among all facts.
    pub rank: u64,
    /// Wall time of its first fact.
    pub created: WallTime,
    /// Whether it was deleted.
    pub deleted: bool,
}

deletable!(Run);

impl Run {
    /// Sets a field.
    pub(crate) fn set(&mut self, field: &RunField) {
        match field {
            RunField::Lot(lot) => self.lot = Some(*lot),
            RunField::Location(location) => self.location = *location,
            RunField::Ink(ink) => self.ink.clone_from(ink),
            RunField::InkColour(colour) => self.ink_colour = Some(*colour),
            RunField::Guess(guess) => self.guess = *guess,
            RunField::Screens(_)
            | RunField::Mesh(_)
            | RunField::Flash(_)
            | RunField::Hits(_)
            | RunField::Dryer(_)
            | RunField::Belt(_)
            | RunField::Dwell(_)
            | RunField::Passes(_)
            | RunField::Squeegee(_)
            | RunField::OffContact(_)
            | RunField::BelowCollar(_)
            | RunField::Placement(_) => self.set_up.set(field),
        }
    }
}
