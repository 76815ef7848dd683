//! An ink's data sheet: the maker's temperatures and times.

use super::fact::{is_met, is_set};
use crate::journal::Subject;
use crate::journal::fact::{is_name, is_note};
use crate::pack::Pack;
use crate::plan::Day;
use crate::quantity::{Seconds, Temperature};
use crate::shop::Shop;
use serde::{Deserialize, Serialize};

/// A field of an ink's sheet. **Frozen**: stored.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Pack)]
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
    pub(super) fn in_bounds(&self) -> bool {
        match self {
            Self::Ink(text) => is_name(text),
            Self::Cure(t) | Self::Flash(t) | Self::Highest(t) => t.is_none_or(is_met),
            Self::Hold(time) => time.is_none_or(is_set),
            Self::Source(text) => is_note(text),
            Self::SourceDay(_) => true,
        }
    }
}

/// The figures of a sheet. **Frozen**: stored with each test.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default, Serialize, Deserialize, Pack)]
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
    pub(super) fn in_bounds(&self) -> bool {
        [self.cure, self.flash, self.highest].into_iter().flatten().all(is_met) && self.hold.is_none_or(is_set)
    }
}

/// An ink's data sheet.
#[derive(Clone, Debug, PartialEq, Default, Serialize, Deserialize, Pack)]
pub struct InkSheet {
    /// The ink's name as used in runs.
    pub ink: String,
    /// Figures of the sheet.
    pub figures: SheetFigures,
    /// Title or number of the sheet.
    pub source: String,
    /// The date on the sheet, or the day it was read.
    pub source_day: Option<Day>,
    /// Unix time in milliseconds of its last change.
    pub touched: u64,
    /// Whether it was deleted.
    pub deleted: bool,
}

impl InkSheet {
    pub(super) fn set(&mut self, field: &SheetField) {
        match field {
            SheetField::Ink(ink) => self.ink.clone_from(ink),
            SheetField::Cure(t) => self.figures.cure = *t,
            SheetField::Hold(time) => self.figures.hold = *time,
            SheetField::Flash(t) => self.figures.flash = *t,
            SheetField::Highest(t) => self.figures.highest = *t,
            SheetField::Source(source) => self.source.clone_from(source),
            SheetField::SourceDay(day) => self.source_day = *day,
        }
    }
}

/// Key under which spellings of an ink's name match: lower case, without spaces.
///
/// ```
/// use lastpull_core::heat::ink_key;
///
/// assert_eq!(ink_key("Dark  Navy"), ink_key("darknavy "));
/// ```
pub fn ink_key(name: &str) -> String {
    name.chars().filter(|letter| !letter.is_whitespace()).flat_map(char::to_lowercase).collect()
}

/// The sheet of an ink, matched by [`ink_key`]; of several, the one changed last. `None` for an empty name.
pub fn sheet_for<'a>(shop: &'a Shop, ink: &str) -> Option<(Subject, &'a InkSheet)> {
    let key = ink_key(ink);
    if key.is_empty() {
        return None;
    }
    shop.heat
        .sheets()
        .filter(|(_, sheet)| !sheet.deleted && ink_key(&sheet.ink) == key)
        .max_by_key(|(id, sheet)| (sheet.touched, *id))
}
