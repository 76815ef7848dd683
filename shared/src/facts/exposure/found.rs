//! How an exposure was found, as it is stored. **Frozen** as [`crate::facts::Fact`] is.

use super::lamp::is_lamp_distance;
use crate::codec::Encode;
use crate::units::{Length, Seconds};
use serde::{Deserialize, Serialize};

/// Steps on the guide.
pub const GUIDE_STEPS: u8 = 21;
/// Shortest and longest exposure taken, in seconds: from a strong panel to a bulb across the room.
pub const SHORTEST: f64 = 0.5;
/// See [`SHORTEST`].
pub const LONGEST: f64 = 4.0 * 3_600.0;

/// How an exposure was found. **Frozen**: it is stored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Found {
    /// Read from a 21-step guide.
    StepGuide {
        /// How long the test was exposed.
        test: Seconds,
        /// The last step that stayed solid.
        solid: u8,
        /// The step that was aimed at.
        goal: u8,
    },
    /// Read from the columns of a calculator film.
    Columns {
        /// How long the test was exposed.
        test: Seconds,
        /// Light of the best column, in percent of the test's.
        percent: u8,
    },
    /// Computed from another distance of a point lamp; not tested yet.
    Distance {
        /// The time at the old distance.
        before: Seconds,
        /// The old distance.
        from: Length,
    },
    /// Known from the shop's practice.
    Practice,
}

impl Found {
    /// Whether a stencil was looked at: a computed time is not proved yet.
    pub fn is_tested(self) -> bool {
        !matches!(self, Self::Distance { .. })
    }

    pub(crate) fn in_bounds(self) -> bool {
        let steps = 1..=GUIDE_STEPS;
        match self {
            Self::StepGuide { test, solid, goal } => {
                is_exposure(test) && steps.contains(&solid) && steps.contains(&goal)
            }
            Self::Columns { test, percent } => is_exposure(test) && (1..=100).contains(&percent),
            Self::Distance { before, from } => is_exposure(before) && is_lamp_distance(from),
            Self::Practice => true,
        }
    }
}

/// Whether a time can be an exposure's.
pub(crate) fn is_exposure(time: Seconds) -> bool {
    (SHORTEST..=LONGEST).contains(&time.seconds())
}

/// The least solid step to aim at. Published by an emulsion maker as the minimum of a hard stencil
/// ("How do I test exposure").
pub const LEAST_GOAL: u8 = 7;
