//! A screen in a line: its label, its mesh, how long it has stood there, what it carries.

use crate::live::Drawn;
use crate::parts::{Icon, Swatch};
use crate::place::{Place, ScreensPlace};
use crate::words;
use lastpull_core::screen::ScreenRow;
use lastpull_view::view;
use leptos::prelude::*;

/// A line that leads to the screen's card.
#[component(transparent)]
pub fn Row(row: ScreenRow) -> Drawn {
    let card = Place::Screens(ScreensPlace::Card(row.id)).hash();
    view! { <li><a class="screen-row" href=card><Words row/></a></li> }
}

/// What the line says.
#[component(transparent)]
pub fn Words(row: ScreenRow) -> Drawn {
    let mut parts: Vec<String> = Vec::new();
    parts.extend(row.mesh.map(|mesh| words::mesh_count(mesh.count)));
    parts.extend(row.tension.map(words::tension));
    let age = match row.warning {
        Some(warning) => {
            view! { <span class="badge tight"><Icon name="alert"/>{words::age_warning_short(warning)}</span> }
        }
        None => view! { <span class="muted">{words::age(row.age)}</span> },
    };
    let carries = row.carries.into_iter().next().map(|carried| {
        view! {
            <span class="screen-art">
                <Swatch colour=carried.ink_colour/>
                <span>{carried.title}{(!row.colour.is_empty()).then(|| format!(" · {}", row.colour))}</span>
            </span>
        }
    });
    view! {
        <strong class="screen-label">{row.label}</strong>
        <span class="row-words">
            <span class="muted">{parts.join(" · ")}</span>
            {carries}
        </span>
        <span class="screen-age">{age}</span>
    }
}
