//! The steps from an empty frame to a screen that can print, and how long they take.

use crate::codec::Encode;
use crate::units::Seconds;
use serde::{Deserialize, Serialize};

/// A step, in the order of the work.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum BurnStep {
    /// Take the old stencil off.
    Reclaim,
    /// Degrease and coat.
    Coat,
    /// Let the emulsion dry.
    Dry,
    /// Expose.
    Expose,
    /// Wash out, and let it dry.
    WashDry,
    /// Tape.
    Tape,
}

impl BurnStep {
    /// All, in the order of the work.
    pub const ALL: [Self; 6] = [Self::Reclaim, Self::Coat, Self::Dry, Self::Expose, Self::WashDry, Self::Tape];

    /// Whether it takes hands all along, so that several screens go one after another. Screens dry
    /// side by side.
    pub fn is_by_hand(self) -> bool {
        !matches!(self, Self::Dry | Self::WashDry)
    }
}

/// How long each step takes in this shop. **Frozen**: a fact holds it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, Encode)]
#[serde(deny_unknown_fields)]
pub struct StepTimes {
    /// To take a stencil off.
    pub reclaim: Seconds,
    /// To degrease and coat.
    pub coat: Seconds,
    /// To dry after coating.
    pub dry: Seconds,
    /// To expose, with placing the film.
    pub expose: Seconds,
    /// To wash out, and dry.
    pub wash_dry: Seconds,
    /// To tape.
    pub tape: Seconds,
}

/// Where a shop starts that has set none. Common practice, no source: drying above all depends on
/// the room, so that a shop should set its own.
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
    /// The longest a step can be set to.
    pub(crate) const MOST_MINUTES: u32 = 3 * 24 * 60;

    /// Milliseconds of a step.
    pub fn of(&self, step: BurnStep) -> u64 {
        let time = match step {
            BurnStep::Reclaim => self.reclaim,
            BurnStep::Coat => self.coat,
            BurnStep::Dry => self.dry,
            BurnStep::Expose => self.expose,
            BurnStep::WashDry => self.wash_dry,
            BurnStep::Tape => self.tape,
        };
        u64::from(time.milliseconds())
    }

    /// As [`crate::facts::Fact::in_bounds`].
    pub(crate) fn in_bounds(&self) -> bool {
        BurnStep::ALL.iter().all(|step| self.of(*step) <= u64::from(Self::MOST_MINUTES) * 60_000)
    }
}
