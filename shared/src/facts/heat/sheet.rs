//! The stored fields of an ink's data sheet. **Frozen** as [`crate::facts::Fact`] is.

use crate::bounds::{is_name, is_note};
use crate::codec::Encode;
use crate::facts::{is_met, is_set};
use crate::time::Day;
use crate::units::{Seconds, Temperature};
use serde::{Deserialize, Serialize};

/// A field of an ink's sheet. **Frozen**: stored.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum SheetField {
    /// The ink's name, as runs carry it.
    Ink(String),
    /// The ink's own temperature at which it cures.
    Cure(Option<Temperature>),
    /// How long it must stay there.
    Hold(Option<Seconds>),
    /// Temperature at which it is flashed.
    Flash(Option<Temperature>),
    /// Highest temperature it bears.
    Highest(Option<Temperature>),
    /// Which sheet.
    Source(String),
    /// The date on the sheet, or on which it was read.
    SourceDay(Option<Day>),
}

impl SheetField {
    pub(crate) fn in_bounds(&self) -> bool {
        match self {
            Self::Ink(text) => is_name(text),
            Self::Cure(t) | Self::Flash(t) | Self::Highest(t) => t.is_none_or(is_met),
            Self::Hold(time) => time.is_none_or(is_set),
            Self::Source(text) => is_note(text),
            Self::SourceDay(_) => true,
        }
    }
}

/// The figures of a sheet. **Frozen**: stored with each test made.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default, Serialize, Deserialize, Encode)]
#[serde(deny_unknown_fields)]
pub struct SheetFigures {
    /// The ink's own temperature at which it cures.
    pub cure: Option<Temperature>,
    /// How long it must stay there.
    pub hold: Option<Seconds>,
    /// Temperature at which it is flashed.
    pub flash: Option<Temperature>,
    /// Highest temperature it bears.
    pub highest: Option<Temperature>,
}

impl SheetFigures {
    pub(crate) fn in_bounds(&self) -> bool {
        [self.cure, self.flash, self.highest].into_iter().flatten().all(is_met) && self.hold.is_none_or(is_set)
    }
}
