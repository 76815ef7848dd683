//! One pot of ink: weighed in, corrected until it matches, labelled, used.

mod place;

pub use place::PotPlace;

use crate::live::{Drawn, nothing};

/// Draws one of these screens.
pub fn screen(_place: PotPlace) -> Drawn {
    nothing()
}
