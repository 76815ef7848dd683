//! An ink's data sheet.

use crate::codec::Encode;
use crate::facts::{SheetField, SheetFigures};
use crate::time::{Day, WallTime};

/// An ink's data sheet.
#[derive(Clone, Debug, PartialEq, Default, Encode)]
pub struct InkSheet {
    /// The ink's name as used in runs.
    pub ink: String,
    /// Figures of the sheet.
    pub figures: SheetFigures,
    /// Title or number of the sheet.
    pub source: String,
    /// The date on the sheet, or the day it was read.
    pub source_day: Option<Day>,
    /// Wall time of its last change.
    pub touched: WallTime,
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
