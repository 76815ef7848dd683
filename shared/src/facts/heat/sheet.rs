//! The stored fields of an ink's data sheet. **Frozen** as [`crate::facts::Fact`] is.

use crate::bounds::{is_name, is_note};
use crate::codec::Encode;
use crate::facts::{is_machine_time, is_shop_temperature};
use crate::time::Day;
use crate::units::{Seconds, Temperature};
use serde::{Deserialize, Serialize};

/// A field of an ink's sheet. **Frozen**: stored.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum SheetField {
    /// The ink's name as used in runs.
    Ink(String),
    /// Temperature of the ink at which it cures.
    Cure(Option<Temperature>),
    /// Time it must stay at that temperature.
    Hold(Option<Seconds>),
    /// Flash temperature.
    Flash(Option<Temperature>),
    /// Maximum temperature of the ink.
    Highest(Option<Temperature>),
    /// Title or number of the sheet.
    Source(String),
    /// The date on the sheet, or the day it was read.
    SourceDay(Option<Day>),
}

impl SheetField {
    pub(crate) fn in_bounds(&self) -> bool {
        match self {
            Self::Ink(text) => is_name(text),
            Self::Cure(t) | Self::Flash(t) | Self::Highest(t) => t.is_none_or(is_shop_temperature),
            Self::Hold(time) => time.is_none_or(is_machine_time),
            Self::Source(text) => is_note(text),
            Self::SourceDay(_) => true,
        }
    }
}

/// The figures of a sheet. **Frozen**: stored with each test.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default, Serialize, Deserialize, Encode)]
#[serde(deny_unknown_fields)]
pub struct SheetFigures {
    /// Temperature of the ink at which it cures.
    pub cure: Option<Temperature>,
    /// Time it must stay at that temperature.
    pub hold: Option<Seconds>,
    /// Flash temperature.
    pub flash: Option<Temperature>,
    /// Maximum temperature of the ink.
    pub highest: Option<Temperature>,
}

impl SheetFigures {
    pub(crate) fn in_bounds(&self) -> bool {
        [self.cure, self.flash, self.highest].into_iter().flatten().all(is_shop_temperature)
            && self.hold.is_none_or(is_machine_time)
    }
}
