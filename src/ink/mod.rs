//! The shelf of inks: recipes, components, stock, and what the day needs of them.

mod home;
mod place;

pub use place::InkPlace;

use crate::live::{Drawn, nothing};
use home::InkHome;
use lastpull_view::view;

/// Draws one of these screens.
pub fn screen(place: InkPlace) -> Drawn {
    match place {
        InkPlace::Home => view! { <InkHome/> },
        _ => nothing(),
    }
}
