//! An ink's data sheet.

use crate::codec::Encode;
use crate::facts::{SheetField, SheetFigures};
use crate::time::Day;
use serde::{Deserialize, Serialize};

/// An ink's sheet.
#[derive(Clone, Debug, PartialEq, Default, Serialize, Deserialize, Encode)]
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
    pub(crate) fn set(&mut self, field: &SheetField) {
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
