//! Data of a screen: mesh with its data sheet, theoretical ink volume, tension, emulsion.

use crate::i18n;
use crate::route::{Route, ScreensRoute};
use lastpull_core::ids::Subject;
use lastpull_core::screen::{MeshSheet, MissingSheetValue, Screen, mesh_volume};
use leptos::prelude::*;

/// The data, one per line; unknown values are left out, except the mesh.
#[component]
pub fn Data(
    screen: Screen,
    replaces: Option<(Subject, String)>,
    replaced_by: Option<(Subject, String)>,
) -> impl IntoView {
    let mesh = screen.mesh.map_or_else(|| i18n::screen_mesh_unknown().to_owned(), |mesh| i18n::mesh_count(mesh.count));
    let sheet = screen.mesh.map(|mesh| sheet_words(&mesh)).filter(|words| !words.is_empty());
    let coats = screen.coats.map(|coats| i18n::coats_of(coats.print, coats.squeegee));
    view! {
        <section class="screen-data">
            <h2>{i18n::screen_data()}</h2>
            <dl class="screen-lines">
                {line(i18n::screen_mesh(), Some(mesh))}
                {line(i18n::screen_sheet(), sheet)}
                {screen.mesh.map(|mesh| view! { <div><dt>{i18n::screen_volume()}</dt><dd id="volume">{volume(&mesh)}</dd></div> })}
                {line(i18n::screen_tension(), screen.tension.map(i18n::tension))}
                {line(i18n::screen_emulsion(), filled(screen.emulsion))}
                {line(i18n::screen_coats(), coats)}
                {other(i18n::screen_replaces(), replaces)}
                {other(i18n::screen_replaced_by(), replaced_by)}
            </dl>
            {filled(screen.notes).map(|notes| view! { <p class="job-notes">{notes}</p> })}
        </section>
    }
}

/// The data sheet's values in one line.
pub fn sheet_words(mesh: &MeshSheet) -> String {
    let mut parts: Vec<String> = Vec::new();
    parts.extend(mesh.thread_um.map(i18n::sheet_thread));
    parts.extend(mesh.opening_um.map(i18n::sheet_opening));
    parts.extend(mesh.open_area_permille.map(|share| i18n::sheet_open_area(i18n::number(f64::from(share) / 10.0, 1))));
    parts.extend(mesh.thickness_um.map(i18n::sheet_thickness));
    if mesh.dyed {
        parts.push(i18n::sheet_dyed().into());
    }
    parts.join(", ")
}

fn volume(mesh: &MeshSheet) -> AnyView {
    match mesh_volume(mesh) {
        Ok(volume) => view! {
            {i18n::screen_volume_of(i18n::number(volume.cm3_m2, 0))}
            <small class="muted">{i18n::screen_volume_hint()}</small>
        }
        .into_any(),
        Err(MissingSheetValue::OpenArea) => view! { <span class="muted">{i18n::screen_lacks_open()}</span> }.into_any(),
        Err(MissingSheetValue::Thickness) => {
            view! { <span class="muted">{i18n::screen_lacks_thickness()}</span> }.into_any()
        }
    }
}

fn filled(text: String) -> Option<String> {
    (!text.is_empty()).then_some(text)
}

fn line(name: &'static str, value: Option<String>) -> AnyView {
    value.map(|value| view! { <div><dt>{name}</dt><dd>{value}</dd></div> }).into_any()
}

fn other(name: &'static str, screen: Option<(Subject, String)>) -> AnyView {
    screen
        .map(|(id, label)| {
            let card = Route::Screens(ScreensRoute::Screen(id)).hash();
            view! { <div><dt>{name}</dt><dd><a class="screen-link" href=card>{label}</a></dd></div> }
        })
        .into_any()
}
