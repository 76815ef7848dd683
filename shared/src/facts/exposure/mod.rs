//! What can happen when stencils are exposed and reclaimed. **Frozen** as [`crate::facts::Fact`] is.

use crate::bounds::{LIST, is_name, is_note};
use crate::codec::Encode;
use crate::ids::Subject;
use serde::{Deserialize, Serialize};

mod bath;
mod emulsion;
mod found;
mod known;
mod lamp;

pub(crate) use bath::MAX_BATCH_SECONDS;
pub use bath::{BatchTime, BathField};
pub use emulsion::{EmulsionField, Family};
pub(crate) use found::is_exposure_time;
pub use found::{ExposureMethod, GUIDE_STEPS, LONGEST, MIN_GOAL, SHORTEST};
pub use known::Exposure;
pub(crate) use lamp::MAX_LAMP_DISTANCE_IN;
pub use lamp::{LampField, LampKind};

/// A fact about exposure, or about the reclaim bath.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum StencilFact {
    /// Sets fields of a lamp; the subject is the lamp.
    Lamp(Vec<LampField>),
    /// Sets fields of an emulsion; the subject is the emulsion.
    Emulsion(Vec<EmulsionField>),
    /// Sets the step of the 21-step guide that should stay solid.
    Goal(u8),
    /// Records a known exposure; the subject is its id.
    Exposure(Exposure),
    /// The reclaim bath was charged, which begins a new baseline; the subject is the charge.
    BathCharged {
        /// The chemistry used, as the shop calls it.
        chemistry: String,
        /// Who charged it; `None` if the shop keeps no crew list.
        by: Option<String>,
    },
    /// Sets how the shop uses its bath.
    Bath(Vec<BathField>),
    /// Screens went into the bath, or back into it; the subject is the batch.
    BatchIn {
        /// The screens, as far as they are in the shop's list.
        screens: Vec<Subject>,
        /// Number of screens.
        count: u16,
    },
    /// The batch came out clean.
    BatchOut {
        /// Its time.
        time: BatchTime,
        /// Number of screens; `None` for as many as went in.
        count: Option<u16>,
    },
}

/// Most screens in a bath.
pub(crate) const MAX_SCREENS: u16 = 200;

impl StencilFact {
    /// Whether every value is within its limits; see [`crate::journal::JournalFact::in_bounds`].
    pub(crate) fn in_bounds(&self) -> bool {
        let count = |count: &u16| (1..=MAX_SCREENS).contains(count);
        match self {
            Self::Lamp(fields) => fields.len() <= LIST && fields.iter().all(LampField::in_bounds),
            Self::Emulsion(fields) => fields.len() <= LIST && fields.iter().all(EmulsionField::in_bounds),
            Self::Goal(step) => (1..=GUIDE_STEPS).contains(step),
            Self::Exposure(exposure) => exposure.in_bounds(),
            Self::BathCharged { chemistry, by } => is_note(chemistry) && by.as_deref().is_none_or(is_name),
            Self::Bath(fields) => fields.len() <= LIST && fields.iter().all(BathField::in_bounds),
            Self::BatchIn { screens, count: all } => screens.len() <= usize::from(MAX_SCREENS) && count(all),
            Self::BatchOut { time, count: all } => time.in_bounds() && all.iter().all(count),
        }
    }
}
