//! Components that must be drawn down before anything can be worked out.

use super::ColourPlace;
use crate::parts::Icon;
use crate::place::Place;
use crate::words;
use lastpull_core::ink::NotDrawn;
use leptos::prelude::*;

/// Each with what is to be drawn down next.
pub fn missing(rows: &[NotDrawn]) -> AnyView {
    let rows = rows.iter().map(|row| {
        let next = row.next.as_ref().map(words::colour_next_words).unwrap_or_default();
        let to = Place::Colour(ColourPlace::NewDrawdown(row.component)).hash();
        view! {
            <a class="menu-row" href=to>
                <span class="row-words"><strong>{row.name.clone()}</strong><span class="muted">{next}</span></span>
                <Icon name="next"/>
            </a>
        }
    });
    let rows = rows.collect_view();
    view! { <p>{words::colour_not_drawn()}</p><nav class="menu">{rows}</nav> }.into_any()
}
