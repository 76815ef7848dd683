//! What the maker's sheet says of an ink.

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

/// The figures of a sheet. **Frozen**: stored with each test made.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default, Serialize, Deserialize, Pack)]
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
    pub(super) fn in_bounds(&self) -> bool {
        [self.cure, self.flash, self.highest].into_iter().flatten().all(is_met) && self.hold.is_none_or(is_set)
    }
}

/// An ink's sheet.
#[derive(Clone, Debug, PartialEq, Default, Serialize, Deserialize, Pack)]
pub struct InkSheet {
    /// The ink's name, as runs carry it.
    pub ink: String,
    /// What the sheet says.
    pub figures: SheetFigures,
    /// Which sheet.
    pub source: String,
    /// The date on the sheet, or on which it was read.
    pub source_day: Option<Day>,
    /// Wall time of its last change.
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

/// What two spellings of an ink's name have in common: small letters, no spaces.
pub fn ink_key(name: &str) -> String {
    name.chars().filter(|letter| !letter.is_whitespace()).flat_map(char::to_lowercase).collect()
}

/// The sheet of an ink by its name, whatever its case and spaces. Of several the one changed last.
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
