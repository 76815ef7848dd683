//! The stored fields of dryers and flash units. **Frozen** as [`crate::facts::Fact`] is.

use crate::bounds::{is_name, is_note};
use crate::codec::Encode;
use crate::facts::{is_belt_speed, is_machine_length};
use crate::units::{BeltSpeed, Length};
use serde::{Deserialize, Serialize};

/// Kind of heating unit. **Frozen**: stored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case")]
pub enum HeaterKind {
    /// A conveyor dryer.
    #[default]
    Dryer,
    /// A flash unit.
    Flash,
}

/// How a print's temperature was measured. **Frozen**: stored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case")]
pub enum SensorMethod {
    /// A probe that travels through the dryer on the print.
    #[default]
    Probe,
    /// A temperature strip on the garment.
    Strip,
    /// An infrared thermometer at the exit: sees only the surface, after it has begun to cool.
    Infrared,
}

/// A field of a dryer or flash unit. **Frozen**: stored.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum HeaterField {
    /// Dryer or flash unit.
    Kind(HeaterKind),
    /// Name in the shop.
    Name(String),
    /// Length of belt under heat.
    HeatedLength(Option<Length>),
    /// Slowest belt speed.
    Slowest(Option<BeltSpeed>),
    /// Fastest belt speed.
    Fastest(Option<BeltSpeed>),
    /// Free notes.
    Notes(String),
}

impl HeaterField {
    pub(crate) fn in_bounds(&self) -> bool {
        match self {
            Self::Kind(_) => true,
            Self::Name(text) => is_name(text),
            Self::HeatedLength(length) => length.is_none_or(is_machine_length),
            Self::Slowest(speed) | Self::Fastest(speed) => speed.is_none_or(is_belt_speed),
            Self::Notes(text) => is_note(text),
        }
    }
}
