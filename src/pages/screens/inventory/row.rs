//! A screen in one line: label, mesh, time in its state, art.

use crate::components::{Icon, Swatch};
use crate::i18n;
use crate::route::{Route, ScreensRoute};
use lastpull_core::screen::ScreenRow;
use leptos::prelude::*;

/// A line that links to the screen's page.
#[component]
pub fn Row(row: ScreenRow) -> impl IntoView {
    let card = Route::Screens(ScreensRoute::Screen(row.id)).hash();
    view! { <li><a class="screen-row" href=card><Words row/></a></li> }
}

/// The text of the line.
#[component]
pub fn Words(row: ScreenRow) -> impl IntoView {
    let mesh = row.mesh.map(|mesh| i18n::mesh_count(mesh.count));
    let warning = row.warning.map(|warning| {
        view! { <span><span class="badge tight"><Icon name="alert"/>{i18n::age_warning_short(warning)}</span></span> }
    });
    let age = row.warning.is_none().then(|| i18n::screen_for(i18n::age(row.age)));
    let carries = row.assigned.into_iter().next().map(|carried| {
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
            <span class="muted">{mesh}</span>
            {carries}
            {warning}
        </span>
        <span class="screen-age muted">{age}</span>
    }
}
