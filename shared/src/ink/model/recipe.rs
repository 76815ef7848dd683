//! A recipe as the facts leave it.

use crate::codec::Encode;
use crate::colour::Colour;
use crate::facts::{ColourReading, ReadOn, RecipeField};
use crate::time::WallTime;

/// A recipe, in the state its facts leave it. Its parts are those of its revisions.
#[derive(Clone, Debug, PartialEq, Default, Encode)]
pub struct Recipe {
    /// Name of the ink: runs refer to it by this name.
    pub name: String,
    /// Colour shown on screen.
    pub colour: Option<Colour>,
    /// Target colour, if it was read.
    pub target: Option<ColourReading>,
    /// What the target and the swatches are read on.
    pub read_on: ReadOn,
    /// Free note.
    pub note: String,
    /// Wall time of its first fact.
    pub created: WallTime,
    /// Wall time of its last change.
    pub modified: WallTime,
    /// Whether it was deleted.
    pub deleted: bool,
}

impl Recipe {
    pub(crate) fn set(&mut self, field: &RecipeField) {
        match field {
            RecipeField::Name(name) => self.name.clone_from(name),
            RecipeField::Colour(colour) => self.colour = *colour,
            RecipeField::Target(reading) => self.target = *reading,
            RecipeField::Note(note) => self.note.clone_from(note),
            RecipeField::ReadOn(on) => self.read_on = *on,
        }
    }
}
