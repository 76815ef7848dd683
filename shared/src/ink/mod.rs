//! Ink: the colours of inks and garments, and the bench at which inks are mixed.
//!
//! A **recipe** has revisions, each a list of [`Part`]s. A **pot** is a batch: it is weighed by a revision
//! ([`weigh_in`]), then corrected, split, merged, topped up and used; what it holds is always the replay of what
//! happened to it ([`pot_state`]). Every pour, correction, yes and weighing of the shelf is an event with an id
//! of its own: to take it back is to delete that id, and its photos are photos of it.

mod batch;
mod colour;
mod forms;
pub(crate) mod model;
mod pot;
mod recipe;
mod views;

pub use crate::facts::{
    BatchSize, ColourReading, ComponentField, ComponentKind, DrawdownMade, Film, Hiding, InkFact, Lay, Part, PotField,
    PourStep, PrintUse, ReadBy, ReadOn, RecipeField, Share, SwatchSeen, lab_of, reading_of,
};
pub use batch::*;
pub use colour::*;
pub use forms::*;
pub use model::*;
pub use pot::*;
pub use recipe::*;
pub use views::*;
