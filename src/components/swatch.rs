//! A colour, and an ink colour on a garment.

use lastpull_core::colour::Colour;
use leptos::prelude::*;

/// A colour. Decoration only: its name is beside it.
#[component]
pub fn Swatch(#[prop(into)] colour: Option<Colour>) -> impl IntoView {
    view! {
        <span class="swatch" class:unknown=colour.is_none() aria-hidden="true" style:background-color=colour.map(|c| c.to_string())></span>
    }
}

/// A small garment in its colour with the ink on it.
#[component]
pub fn GarmentChip(garment: Option<Colour>, ink: Option<Colour>) -> impl IntoView {
    let cloth = garment.map_or_else(|| "var(--line)".to_owned(), |colour| colour.to_string());
    let print = ink.map_or_else(|| "transparent".to_owned(), |colour| colour.to_string());
    view! {
        <svg class="garment-chip" viewBox="0 0 40 40" aria-hidden="true" focusable="false">
            <path class="cloth" style:fill=cloth d="M13 5 3 11l4 9 4-2v18h18V18l4 2 4-9-10-6c-2 5-12 5-14 0z"></path>
            <rect style:fill=print x="15" y="16" width="10" height="11" rx="1.500"></rect>
        </svg>
    }
}
