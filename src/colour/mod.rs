//! Colour at the bench: readings, how far a pot is from its target, what to add, whether it will cover.

mod advice;
mod beside;
mod component;
mod cover;
mod cover_rows;
mod curve_field;
mod difference;
mod drawdown;
mod drawdown_line;
mod lab_inputs;
mod match_screen;
mod missing;
mod on_garment;
mod photo_marks;
mod photo_of;
mod photo_read;
mod place;
mod pour_sheet;
mod read_sheet;
mod reading_field;
mod target;

pub use on_garment::OnGarment;
pub use photo_of::{PhotoOf, keep_picture};
pub use place::ColourPlace;
pub use reading_field::{Reading, ReadingField};

use leptos::prelude::*;

/// Draws one of these screens.
pub fn screen(place: ColourPlace) -> AnyView {
    match place {
        ColourPlace::Match(pot) => view! { <match_screen::MatchScreen pot/> }.into_any(),
        ColourPlace::Target(recipe) => view! { <target::TargetScreen recipe/> }.into_any(),
        ColourPlace::Cover(recipe) => view! { <cover::CoverScreen recipe/> }.into_any(),
        ColourPlace::Component(component) => view! { <component::ComponentColourScreen component/> }.into_any(),
        ColourPlace::NewDrawdown(component) => view! { <drawdown::DrawdownScreen component/> }.into_any(),
    }
}
