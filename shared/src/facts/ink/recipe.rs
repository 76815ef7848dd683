//! The stored fields and parts of a recipe. **Frozen** as [`crate::facts::Fact`] is.

use super::reading::{ColourReading, ReadOn};
use super::share::Share;
use crate::bounds::{LIST, is_name, is_note};
use crate::codec::Encode;
use crate::colour::Colour;
use crate::ids::Subject;
use serde::{Deserialize, Serialize};

/// A part of a recipe. **Frozen**: stored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, Encode)]
#[serde(deny_unknown_fields)]
pub struct Part {
    /// The component.
    pub component: Subject,
    /// Its share of the ink's weight.
    pub share: Share,
    /// Whether it is added on top of the ink's weight.
    pub on_top: bool,
}

/// A field of a recipe. **Frozen** as [`crate::facts::Fact`] is.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum RecipeField {
    /// Name of the ink: runs refer to it by this name.
    Name(String),
    /// Colour shown on screen.
    Colour(Option<Colour>),
    /// Target colour, if it was read.
    Target(Option<ColourReading>),
    /// Free note.
    Note(String),
    /// What the target and the swatches are read on.
    ReadOn(ReadOn),
}

impl RecipeField {
    /// Whether every value is within its limits; see [`crate::journal::JournalFact::in_bounds`].
    pub(crate) fn in_bounds(&self) -> bool {
        match self {
            Self::Name(text) => is_name(text),
            Self::Note(text) => is_note(text),
            Self::Target(reading) => reading.is_none_or(ColourReading::in_bounds),
            Self::Colour(_) | Self::ReadOn(_) => true,
        }
    }
}

/// Whether a list of parts is a complete recipe: none of them is zero, and those of the ink add up to 100 %.
pub(crate) fn is_complete_recipe(parts: &[Part]) -> bool {
    let ink: u64 = parts.iter().filter(|part| !part.on_top).map(|part| u64::from(part.share.billionths())).sum();
    (1..=LIST).contains(&parts.len())
        && parts.iter().all(|part| part.share > Share::default() && part.share.in_bounds())
        && ink == u64::from(Share::WHOLE.billionths())
}
