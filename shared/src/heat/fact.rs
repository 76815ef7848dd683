//! What can happen to heat in the shop. **Frozen** as [`crate::journal::Fact`] is.

use crate::quantity::Temperature;
use serde::{Deserialize, Serialize};

/// Something about dryers, flash units, inks' limits, tests of a cure, or the room.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum HeatFact {
    /// The room was read.
    RoomRead {
        /// Air temperature in the shade.
        temperature: Temperature,
        /// Relative humidity in percent.
        humidity: u8,
    },
}

impl HeatFact {
    /// As [`crate::journal::Fact::in_bounds`].
    pub(crate) fn in_bounds(&self) -> bool {
        match self {
            Self::RoomRead { humidity, .. } => *humidity <= 100,
        }
    }
}
