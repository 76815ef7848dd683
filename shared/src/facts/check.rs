//! The checks before the first pull, as they are stored. **Frozen** as [`crate::facts::Fact`] is.

use super::Fabric;
use crate::codec::Encode;
use crate::colour::Colour;
use crate::units::{BeltSpeed, Length, Seconds, Temperature};
use serde::{Deserialize, Serialize};

/// A thing to check. **Frozen** names and order: they are stored, and the order is the order to work
/// in. Heat first, since a tunnel takes minutes to settle and must have done so before ink touches a
/// screen; then what touches the garment; ink last.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case")]
pub enum CheckItem {
    /// The dryer's temperature.
    Dryer,
    /// The dryer's belt.
    Belt,
    /// Time in the heat.
    Dwell,
    /// Passes through the dryer.
    Passes,
    /// The flash, or none.
    Flash,
    /// The flash unit's height over the print.
    FlashDistance,
    /// Garments: which, in which colour.
    Garment,
    /// The screens on the press.
    Screens,
    /// Their mesh.
    Mesh,
    /// Gap between screen and garment.
    OffContact,
    /// The squeegee.
    Squeegee,
    /// Top of the print below the collar.
    BelowCollar,
    /// Anything else about where it goes.
    Placement,
    /// The ink in the screen.
    Ink,
    /// Strokes that lay ink.
    Hits,
}

impl CheckItem {
    /// Whether it concerns the dryer or the flash, which must be right before ink is on the screen.
    pub fn is_heat(self) -> bool {
        self <= Self::FlashDistance
    }
}

/// What a check should find. **Frozen**: stored with each check made.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Expected {
    /// A temperature.
    Temperature(Temperature),
    /// A time.
    Time(Seconds),
    /// A length.
    Length(Length),
    /// A belt speed.
    Belt(BeltSpeed),
    /// A number of things.
    Count(u32),
    /// Threads an inch.
    Mesh(u16),
    /// No flash at all.
    NoFlash,
    /// In words the printer wrote.
    Words(String),
    /// Garments.
    Garment {
        /// What garment.
        name: String,
        /// Its fabric.
        fabric: Fabric,
        /// Its colour.
        colour: Option<Colour>,
    },
    /// An ink.
    Ink {
        /// Its name.
        name: String,
        /// Its colour.
        colour: Option<Colour>,
    },
}

impl Expected {
    pub(crate) fn in_bounds(&self) -> bool {
        match self {
            Self::Words(text) | Self::Garment { name: text, .. } | Self::Ink { name: text, .. } => text.len() <= 16_000,
            Self::Temperature(_)
            | Self::Time(_)
            | Self::Length(_)
            | Self::Belt(_)
            | Self::Count(_)
            | Self::Mesh(_)
            | Self::NoFlash => true,
        }
    }

    /// How far a measured value may lie off, in the stored unit; none where nothing is measured.
    /// Common practice, no source: 5 °C and 5 s at the dryer, 1 s at the flash, 1 mm of off-contact, 6 mm of
    /// placement or flash height, a twentieth of the belt speed.
    pub fn tolerance(&self, item: CheckItem) -> Option<i64> {
        match (self, item) {
            (Self::Temperature(_), _) => Some(5_000),
            (Self::Time(_), CheckItem::Flash) => Some(1_000),
            (Self::Time(_), _) => Some(5_000),
            (Self::Length(_), CheckItem::OffContact) => Some(1_000),
            (Self::Length(_), _) => Some(6_350),
            (Self::Belt(speed), _) => Some(i64::from(speed.micrometres_a_second() / 20)),
            (
                Self::Count(_)
                | Self::Mesh(_)
                | Self::NoFlash
                | Self::Words(_)
                | Self::Garment { .. }
                | Self::Ink { .. },
                _,
            ) => None,
        }
    }

    /// The value in the stored unit; none where nothing is measured.
    pub fn value(&self) -> Option<i64> {
        match self {
            Self::Temperature(t) => Some(i64::from(t.milli_celsius())),
            Self::Time(s) => Some(i64::from(s.milliseconds())),
            Self::Length(l) => Some(i64::from(l.micrometres())),
            Self::Belt(speed) => Some(i64::from(speed.micrometres_a_second())),
            Self::Count(_)
            | Self::Mesh(_)
            | Self::NoFlash
            | Self::Words(_)
            | Self::Garment { .. }
            | Self::Ink { .. } => None,
        }
    }
}

/// What came of a check. **Frozen**: stored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum CheckOutcome {
    /// Looked at and right.
    Ticked,
    /// Measured: the value in the unit of [`Expected::value`].
    Measured(i64),
    /// Left out, knowingly.
    Skipped,
    /// Taken back.
    Cleared,
}
