//! Components that must be drawn down before anything can be computed.

use crate::components::Icon;
use crate::i18n;
use crate::route::{ColourRoute, Route};
use lastpull_core::ink::Uncharacterised;
use leptos::prelude::*;

/// The components, each with what to draw down next.
pub fn missing(rows: &[Uncharacterised]) -> AnyView {
    let rows = rows.iter().map(|row| {
        let next = row.next.as_ref().map(i18n::colour_next_words).unwrap_or_default();
        let to = Route::Colour(ColourRoute::NewDrawdown(row.component)).hash();
        view! {
            <a class="menu-row" href=to>
                <span class="row-words"><strong>{row.name.clone()}</strong><span class="muted">{next}</span></span>
                <Icon name="next"/>
            </a>
        }
    });
    let rows = rows.collect_view();
    view! { <p>{i18n::colour_not_drawn()}</p><nav class="menu">{rows}</nav> }.into_any()
}
