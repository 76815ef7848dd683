//! How an exposure was found, as it is stored. **Frozen** as [`crate::facts::Fact`] is.

use super::lamp::is_lamp_distance;
use crate::codec::Encode;
use crate::units::{Length, Seconds};
use serde::{Deserialize, Serialize};

/// Number of steps on the guide.
pub const GUIDE_STEPS: u8 = 21;
/// Shortest exposure accepted, in seconds: a strong panel.
pub const SHORTEST: f64 = 0.5;
/// Longest exposure accepted, in seconds: a bulb across the room.
pub const LONGEST: f64 = 4.0 * 3_600.0;

/// How an exposure time was found. **Frozen**: it is stored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum ExposureMethod {
    /// Read from a 21-step guide.
    StepGuide {
        /// Time of the test exposure.
        test: Seconds,
        /// The last step that stayed solid, 1 to 21.
        solid: u8,
        /// The step that should stay solid, 1 to 21.
        goal: u8,
    },
    /// Read from the columns of an exposure calculator film.
    Columns {
        /// Time of the test exposure.
        test: Seconds,
        /// Light of the best column, in percent of the test's light.
        percent: u8,
    },
    /// Computed from another distance of a point lamp; not tested yet.
    Distance {
        /// The exposure time at the old distance.
        before: Seconds,
        /// The old distance.
        from: Length,
    },
    /// Known from experience.
    Practice,
}

impl ExposureMethod {
    /// Whether it was confirmed on a stencil: a computed time is not.
    pub fn is_tested(self) -> bool {
        match self {
            Self::Distance { .. } => false,
            Self::StepGuide { .. } | Self::Columns { .. } | Self::Practice => true,
        }
    }

    pub(crate) fn in_bounds(self) -> bool {
        let steps = 1..=GUIDE_STEPS;
        match self {
            Self::StepGuide { test, solid, goal } => {
                is_exposure_time(test) && steps.contains(&solid) && steps.contains(&goal)
            }
            Self::Columns { test, percent } => is_exposure_time(test) && (1..=100).contains(&percent),
            Self::Distance { before, from } => is_exposure_time(before) && is_lamp_distance(from),
            Self::Practice => true,
        }
    }
}

/// Whether a time is between [`SHORTEST`] and [`LONGEST`].
pub(crate) fn is_exposure_time(time: Seconds) -> bool {
    (SHORTEST..=LONGEST).contains(&time.seconds())
}

/// The lowest step that should stay solid. Published by an emulsion maker as the minimum for a hard stencil
/// ("How do I test exposure").
pub const MIN_GOAL: u8 = 7;
