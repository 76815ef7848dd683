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

pub(crate) use bath::LONGEST_BATCH;
pub use bath::{BatchTime, BathField};
pub use emulsion::{EmulsionField, Family};
pub(crate) use found::is_exposure;
pub use found::{Found, GUIDE_STEPS, LEAST_GOAL, LONGEST, SHORTEST};
pub use known::Exposure;
pub(crate) use lamp::FURTHEST;
pub use lamp::{LampField, LampKind};

/// Something about exposing stencils, or about the reclaim bath.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum StencilFact {
    /// Fields of a lamp were set; the subject is the lamp.
    Lamp(Vec<LampField>),
    /// Fields of an emulsion were set; the subject is the emulsion.
    Emulsion(Vec<EmulsionField>),
    /// The step of the 21-step guide that the shop aims at.
    Goal(u8),
    /// An exposure was found; the subject is this finding.
    Exposure(Exposure),
    /// The reclaim bath was charged anew, and a new baseline begins; the subject is this charge.
    BathCharged {
        /// What it was charged with, in the shop's words.
        chemistry: String,
        /// Who did it, where the shop has named its crew.
        by: Option<String>,
    },
    /// How the shop uses its bath.
    Bath(Vec<BathField>),
    /// Screens went into the bath, or back into it; the subject is the batch.
    BatchIn {
        /// Which, where they are known.
        screens: Vec<Subject>,
        /// How many.
        count: u16,
    },
    /// They came out clean.
    BatchOut {
        /// How long it took.
        time: BatchTime,
        /// How many, where that differs from how many went in.
        count: Option<u16>,
    },
}

/// Most screens in a bath.
pub(crate) const MOST_SCREENS: u16 = 200;

impl StencilFact {
    /// As [`super::Fact::in_bounds`].
    pub(crate) fn in_bounds(&self) -> bool {
        let count = |count: &u16| (1..=MOST_SCREENS).contains(count);
        match self {
            Self::Lamp(fields) => fields.len() <= LIST && fields.iter().all(LampField::in_bounds),
            Self::Emulsion(fields) => fields.len() <= LIST && fields.iter().all(EmulsionField::in_bounds),
            Self::Goal(step) => (1..=GUIDE_STEPS).contains(step),
            Self::Exposure(exposure) => exposure.in_bounds(),
            Self::BathCharged { chemistry, by } => is_note(chemistry) && by.as_deref().is_none_or(is_name),
            Self::Bath(fields) => fields.len() <= LIST && fields.iter().all(BathField::in_bounds),
            Self::BatchIn { screens, count: all } => screens.len() <= usize::from(MOST_SCREENS) && count(all),
            Self::BatchOut { time, count: all } => time.in_bounds() && all.iter().all(count),
        }
    }
}
