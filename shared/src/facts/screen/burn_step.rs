//! The steps from a used frame to a screen that can print, and how long each takes.

use crate::codec::Encode;
use crate::time::Millis;
use crate::units::Seconds;
use serde::{Deserialize, Serialize};

/// A step, in the order of the work.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum BurnStep {
    /// Remove the old stencil.
    Reclaim,
    /// Degrease and coat.
    Coat,
    /// Let the emulsion dry.
    Dry,
    /// Expose the stencil.
    Expose,
    /// Wash out, and let it dry.
    WashDry,
    /// Tape the edges.
    Tape,
}

impl BurnStep {
    /// All steps, in the order of the work.
    pub const ALL: [Self; 6] = [Self::Reclaim, Self::Coat, Self::Dry, Self::Expose, Self::WashDry, Self::Tape];

    /// Whether somebody must work on it the whole time. Such steps are done one screen after another, while
    /// any number of screens dry at once.
    pub fn is_by_hand(self) -> bool {
        match self {
            Self::Reclaim | Self::Coat | Self::Expose | Self::Tape => true,
            Self::Dry | Self::WashDry => false,
        }
    }
}

/// How long each step takes in this shop. **Frozen**: a fact holds it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, Encode)]
#[serde(deny_unknown_fields)]
pub struct StepTimes {
    /// To remove a stencil.
    pub reclaim: Seconds,
    /// To degrease and coat.
    pub coat: Seconds,
    /// To dry after coating.
    pub dry: Seconds,
    /// To expose, including placing the film.
    pub expose: Seconds,
    /// To wash out and dry.
    pub wash_dry: Seconds,
    /// To tape.
    pub tape: Seconds,
}

/// The initial values of a shop that has entered none. Common practice, no source: drying time depends on
/// the room most of all, so a shop should enter its own.
impl Default for StepTimes {
    fn default() -> Self {
        let minutes = |minutes: u32| Seconds::from_milliseconds(minutes * 60_000);
        Self {
            reclaim: minutes(20),
            coat: minutes(10),
            dry: minutes(60),
            expose: minutes(5),
            wash_dry: minutes(40),
            tape: minutes(5),
        }
    }
}

impl StepTimes {
    /// The longest time that can be entered for a step, in minutes.
    pub(crate) const MAX_MINUTES: u32 = 3 * 24 * 60;

    /// Time for a step.
    pub fn of(&self, step: BurnStep) -> Millis {
        let time = match step {
            BurnStep::Reclaim => self.reclaim,
            BurnStep::Coat => self.coat,
            BurnStep::Dry => self.dry,
            BurnStep::Expose => self.expose,
            BurnStep::WashDry => self.wash_dry,
            BurnStep::Tape => self.tape,
        };
        time.into()
    }

    /// Whether every value is within its limits; see [`crate::journal::JournalFact::in_bounds`].
    pub(crate) fn in_bounds(&self) -> bool {
        BurnStep::ALL.iter().all(|step| self.of(*step) <= Millis::from_minutes(Self::MAX_MINUTES.into()))
    }
}
