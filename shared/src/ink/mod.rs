//! Ink: the colours of inks and garments, and the mixing of inks.
//!
//! A **recipe** has revisions, each a list of [`Part`]s. A **pot** is a batch: it is weighed by a revision
//! ([`weigh_in()`]), then corrected, split, merged, topped up and used; what it holds is always replayed from its events
//! ([`pot_state`]). Every pour, correction, approval and weighing of the shelf is an event with its own id: deleting
//! that id undoes it, and its photos refer to it.
//!
//! # Decisions
//!
//! - **Ledger.** What a pot holds is never stored. Its events are replayed in whole milligrams divided by largest
//!   remainder, so that the grams in equal the grams in pots, used and wasted, exactly. Recording a fact again under
//!   its event's id corrects it in place.
//! - **Recipes.** Parts are billionths, in either convention ([`Part`]). A revision keeps the number it was saved
//!   with, since pots are labelled with it; a mark of four characters distinguishes revisions with the same number.
//! - **Approval.** Whether a pot holds a revision as written, and so whether its approval is still valid, depends on
//!   its contents within the accuracy of the scale. A client always approves a revision. "Make again" takes the one
//!   approved last and says so, also if a newer one exists. Matches and approvals repeat the reading they are based on
//!   as a note only: the reading itself determines the colour, so undoing that reading is enough.
//! - **Charge of the screen.** A screen neither floods nor prints evenly with the few grams that a small run uses, so
//!   at least [`SCREEN_CHARGE`] is mixed and the rest goes back into the pot, where the next runs of that recipe find it
//!   ([`InkNeeded`]). It is one constant, not a setting: the weight of a pot can be typed.
//! - **At the scale** the printer types the total that the scale shows; what to pour, what is in and what is next is
//!   calculated. An over-pour beyond the tolerance (half a step of the scale, or a five-hundredth of the target) asks
//!   first: scale the rest or accept it, both calculated to the gram. Nothing is chosen silently, and undo takes the
//!   reading back.
//! - **Drawdowns** are facts of a component: what the ink lay on, and what was read (a colour, an instrument's curve,
//!   or a chart's flat white or black). A component's constants are calculated from its latest eight drawdowns when
//!   needed and never stored. A clear base without drawdowns is assumed clear and reported as such. One film is one hit
//!   as the drawdowns were printed.
//! - **Tinting strength** is learned from corrections with a single pigment that were read before and after, or, for
//!   a movement of three units or more, found to match by eye. Two pigments between two readings do not count: one
//!   colour does not tell which of them was the stronger. A pot that was changed since its reading is calculated from
//!   that reading, and reported as such.
//! - **Swatches** are read thick or printed on the garment of the pot's run, as the recipe specifies ([`ReadOn`]). A
//!   lot's colour is the one shown on screen until the garment is read.
//! - **Photos** measure differences only. A garment is read beside the target, a target beside a garment that was
//!   read, a drawdown beside a patch that an instrument read ([`known_patches`]) or beside a control card with typed
//!   values. The picture is kept with what was read; the patch beside a drawdown is named in its note. Whatever is
//!   based on a photo says so ([`ColourProvenance`]), also through a white or base.

mod batch;
mod colour;
mod forms;
pub(crate) mod model;
mod pot;
mod recipe;
mod views;

pub use crate::facts::{
    BatchSize, ColourReading, ComponentField, ComponentKind, DrawdownRecord, Film, Hiding, InkFact, Part, PotField,
    PourStep, PrintUse, ReadBy, ReadOn, RecipeField, RecordedLayer, Share, SwatchMeasurement, lab_of, reading_of,
};
pub use batch::*;
pub use colour::*;
pub use forms::*;
pub use model::*;
pub use pot::*;
pub use recipe::*;
pub use views::*;
