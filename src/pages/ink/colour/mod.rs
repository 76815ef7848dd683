//! Colour: readings, a pot's difference from its target, what to add, coverage.

mod advice;
mod component_colour;
mod coverage;
mod coverage_rows;
mod curve_field;
mod difference;
mod drawdown_form;
mod drawdown_row;
mod lab_inputs;
mod match_page;
mod missing_drawdowns;
mod on_garment;
mod photo_marks;
mod photo_reading;
mod photo_reference;
mod photo_subject;
mod pour_dialog;
mod read_dialog;
mod reading;
mod reading_field;
mod target;

pub use photo_subject::{PhotoOf, keep_picture};
pub use reading::{CompleteReading, Reading};
pub use reading_field::ReadingField;

use crate::route::ColourRoute;
use leptos::prelude::*;

/// Draws the page of a route.
pub fn page(route: ColourRoute) -> AnyView {
    match route {
        ColourRoute::Match(pot) => view! { <match_page::MatchPage pot/> }.into_any(),
        ColourRoute::Target(recipe) => view! { <target::TargetPage recipe/> }.into_any(),
        ColourRoute::Cover(recipe) => view! { <coverage::CoveragePage recipe/> }.into_any(),
        ColourRoute::Component(component) => view! { <component_colour::ComponentColourPage component/> }.into_any(),
        ColourRoute::NewDrawdown(component) => view! { <drawdown_form::DrawdownFormPage component/> }.into_any(),
    }
}
