//! The state of a run, folded from its facts.

use super::{CheckRecord, Progress, SetUp};
use crate::codec::Encode;
use crate::colour::Colour;
use crate::deletion::deletable;
use crate::facts::{CheckItem, Fact, Location, RunField};
use crate::ids::{DeviceId, LotId};
use crate::time::{Millis, WallTime};
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
    /// Applies a fact from the press. Returns the time of work that a pull completes, else zero. Other kinds of
    /// facts change nothing.
    pub(crate) fn apply(&mut self, device: DeviceId, at: WallTime, fact: &Fact) -> Millis {
        let progress = &mut self.progress;
        match fact {
            Fact::CheckMade { item, expected, outcome, by } => {
                let record = CheckRecord { expected: expected.clone(), outcome: *outcome, by: by.clone(), at };
                self.checks.insert(*item, record);
            }
            Fact::RunStarted => progress.start(at),
            Fact::Pulled { pieces, size } => return progress.pull(device, at, *pieces, *size),
            Fact::Misprinted { pieces, size, cause, was_counted } => {
                return progress.misprint(device, at, *pieces, *size, *cause, *was_counted);
            }
            Fact::Stopped(cause) => progress.stop(at, *cause),
            Fact::Resumed => progress.resume(at),
            Fact::RunEnded => progress.end(at),
            Fact::ShopNamed(_)
            | Fact::CrewNamed(_)
            | Fact::WeekClosing(_)
            | Fact::DayClosing { .. }
            | Fact::SetUpAllowance(_)
            | Fact::DeviceNamed(_)
            | Fact::RunsOrdered(_)
            | Fact::JobSet(_)
            | Fact::LotSet(_)
            | Fact::RunSet(_)
            | Fact::Deleted
            | Fact::Restored
            | Fact::JobFinished
            | Fact::JobReopened
            | Fact::Heat(_)
            | Fact::Screen(_)
            | Fact::Stencil(_)
            | Fact::Failure(_)
            | Fact::Photo(_)
            | Fact::Ink(_)
            | Fact::Unknown { .. } => {}
        }
        Millis::ZERO
    }

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
