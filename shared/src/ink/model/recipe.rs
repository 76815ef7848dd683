//! A recipe as the facts leave it.

use crate::codec::Encode;
use crate::colour::Colour;
use crate::facts::{ColourReading, ReadOn, RecipeField};

/// A recipe, as the facts about it leave it. Its parts are those of its revisions.
#[derive(Clone, Debug, PartialEq, Default, Encode)]
pub struct Recipe {
    /// What the ink is called: runs name it so.
    pub name: String,
    /// Its colour, as a screen shows it.
    pub colour: Option<Colour>,
    /// The colour it is to have, where that was read.
    pub target: Option<ColourReading>,
    /// On what target and swatches are read.
    pub read_on: ReadOn,
    /// Anything else.
    pub note: String,
    /// Wall time of its first fact.
    pub created: u64,
    /// Wall time of its last change.
    pub touched: u64,
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
