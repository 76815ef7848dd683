//! The checks before the first pull, as they are stored. **Frozen** as [`crate::facts::Fact`] is.

use super::Fabric;
use crate::codec::Encode;
use crate::colour::Colour;
use crate::units::{BeltSpeed, Length, Seconds, Temperature};
use serde::{Deserialize, Serialize};

/// An item to check. **Frozen**: names and order are stored, and the order is the working order. Heat comes
/// first, since a dryer takes minutes to settle and must have settled before ink touches a screen; then what
/// touches the garment; ink last.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case")]
pub enum CheckItem {
    /// Dryer temperature.
    Dryer,
    /// Belt speed of the dryer.
    Belt,
    /// Dwell.
    Dwell,
    /// Passes through the dryer.
    Passes,
    /// Flash time, or no flash.
    Flash,
    /// Height of the flash unit above the print.
    FlashDistance,
    /// Garment and its colour.
    Garment,
    /// The screens on the press.
    Screens,
    /// Mesh of the screens.
    Mesh,
    /// Off-contact: gap between screen and garment.
    OffContact,
    /// The squeegee.
    Squeegee,
    /// Distance from the collar to the top of the print.
    BelowCollar,
    /// Other notes on placement.
    Placement,
    /// The ink in the screen.
    Ink,
    /// Number of strokes that print ink.
    Hits,
}

/// Largest accepted differences of what is measured for an item.
struct Tolerances {
    /// In milliseconds.
    time: i64,
    /// In micrometres.
    length: i64,
}

impl CheckItem {
    /// Whether it is about dryer or flash, which must be right before ink is on the screen.
    pub fn is_heat(self) -> bool {
        match self {
            Self::Dryer | Self::Belt | Self::Dwell | Self::Passes | Self::Flash | Self::FlashDistance => true,
            Self::Garment
            | Self::Screens
            | Self::Mesh
            | Self::OffContact
            | Self::Squeegee
            | Self::BelowCollar
            | Self::Placement
            | Self::Ink
            | Self::Hits => false,
        }
    }

    fn tolerances(self) -> Tolerances {
        let (time, length) = match self {
            Self::Flash => (1_000, 6_350),
            Self::OffContact => (5_000, 1_000),
            Self::Dryer
            | Self::Belt
            | Self::Dwell
            | Self::Passes
            | Self::FlashDistance
            | Self::Garment
            | Self::Screens
            | Self::Mesh
            | Self::Squeegee
            | Self::BelowCollar
            | Self::Placement
            | Self::Ink
            | Self::Hits => (5_000, 6_350),
        };
        Tolerances { time, length }
    }
}

/// The value a check should find. **Frozen**: stored with each check.
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
    /// A number of passes or strokes.
    Count(u32),
    /// A mesh count in threads per inch.
    Mesh(u16),
    /// No flash.
    NoFlash,
    /// Free text from the set-up.
    Words(String),
    /// A garment.
    Garment {
        /// Name of the garment.
        name: String,
        /// Its fabric.
        fabric: Fabric,
        /// Its colour.
        colour: Option<Colour>,
    },
    /// An ink.
    Ink {
        /// Name of the ink.
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

    /// Largest accepted difference of a measured value, in the unit of [`value`](Self::value); `None` if the
    /// item is not measured. Common practice, no source: 5 °C and 5 s at the dryer, 1 s at the flash, 1 mm of
    /// off-contact, 6 mm of placement or flash height, a twentieth of the belt speed.
    pub fn tolerance(&self, item: CheckItem) -> Option<i64> {
        self.measured().map(|(quantity, value)| match quantity {
            Quantity::Temperature => 5_000,
            Quantity::Time => item.tolerances().time,
            Quantity::Length => item.tolerances().length,
            Quantity::BeltSpeed => value / 20,
        })
    }

    /// Whether a measured value is within the tolerance of an item; false if the item is not measured.
    pub fn is_close(&self, item: CheckItem, value: i64) -> bool {
        let off = self.value().map(|meant| (meant - value).abs());
        off.zip(self.tolerance(item)).is_some_and(|(off, tolerance)| off <= tolerance)
    }

    /// The value in its stored unit (milli-°C, milliseconds, micrometres, micrometres per second); `None` if
    /// the item is not measured.
    pub fn value(&self) -> Option<i64> {
        self.measured().map(|(_, value)| value)
    }

    /// The colour of a garment or an ink; `None` for what has no colour.
    pub fn colour(&self) -> Option<ExpectedColour> {
        match self {
            Self::Garment { colour, .. } | Self::Ink { colour, .. } => Some(ExpectedColour { known: *colour }),
            Self::Temperature(_)
            | Self::Time(_)
            | Self::Length(_)
            | Self::Belt(_)
            | Self::Count(_)
            | Self::Mesh(_)
            | Self::NoFlash
            | Self::Words(_) => None,
        }
    }

    /// The same garment or ink in another colour; what has no colour stays as it is.
    pub(crate) fn in_colour(mut self, other: ExpectedColour) -> Self {
        if let Self::Garment { colour, .. } | Self::Ink { colour, .. } = &mut self {
            *colour = other.known;
        }
        self
    }

    /// What is measured, and its value in the stored unit; `None` if the item is not measured.
    fn measured(&self) -> Option<(Quantity, i64)> {
        Some(match self {
            Self::Temperature(t) => (Quantity::Temperature, t.milli_celsius().into()),
            Self::Time(s) => (Quantity::Time, s.milliseconds().into()),
            Self::Length(l) => (Quantity::Length, l.micrometres().into()),
            Self::Belt(speed) => (Quantity::BeltSpeed, speed.micrometres_per_second().into()),
            Self::Count(_)
            | Self::Mesh(_)
            | Self::NoFlash
            | Self::Words(_)
            | Self::Garment { .. }
            | Self::Ink { .. } => return None,
        })
    }
}

/// The colour of a garment or an ink.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ExpectedColour {
    /// `None` if it is not known.
    pub known: Option<Colour>,
}

/// What is measured for a check.
enum Quantity {
    Temperature,
    Time,
    Length,
    BeltSpeed,
}

/// Outcome of a check. **Frozen**: stored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum CheckOutcome {
    /// Checked by eye and right.
    Ticked,
    /// Measured, the dryer by probe or strip; the value is in the unit of [`Expected::value`].
    Measured(i64),
    /// Skipped knowingly.
    Skipped,
    /// The check was taken back.
    Cleared,
    /// Read at the dryer's exit by infrared, which misses the hottest moment, so that nothing is checked by it; the value is
    /// in the unit of [`Expected::value`].
    ReadByInfrared(i64),
    /// Right by the display, after a change of temperature that was timed until the dryer had settled.
    Settled,
}
