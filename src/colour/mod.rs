//! Colour at the bench: readings, how far a pot is from its target, what to add, whether it will cover.

mod place;

pub use place::ColourPlace;

use crate::live::{Drawn, nothing};

/// Draws one of these screens.
pub fn screen(_place: ColourPlace) -> Drawn {
    nothing()
}
