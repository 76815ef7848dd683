//! What an ink is mixed of, in percent: one line a component, the numbers under each other.

use crate::parts::Swatch;
use crate::place::{InkPlace, Place};
use crate::words;
use lastpull_core::ink::PartRow;
use leptos::prelude::*;

/// The components of an ink with their percentages.
pub(super) fn parts_table(parts: &[PartRow]) -> AnyView {
    let rows = parts
        .iter()
        .map(|part| {
            view! {
                <li class="ink-line">
                    <Swatch colour=part.colour/>
                    <a class="row-words" href=Place::Ink(InkPlace::Component(part.component)).hash()>{part.name.clone()}</a>
                    <strong class="ink-number">{words::percent_fixed(part.percent)}</strong>
                </li>
            }
        })
        .collect_view();
    view! { <ul class="ink-lines ink-parts-table">{rows}</ul> }.into_any()
}
