//! The components of an ink in percent: one per line, the numbers aligned.

use crate::components::Swatch;
use crate::i18n;
use crate::route::{InkRoute, Route};
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
                    <a class="row-words" href=Route::Ink(InkRoute::Component(part.component)).hash()>{part.name.clone()}</a>
                    <strong class="ink-number">{i18n::percent_fixed(part.percent)}</strong>
                </li>
            }
        })
        .collect_view();
    view! { <ul class="ink-lines ink-parts-table">{rows}</ul> }.into_any()
}
