//! The answer: the time large, how it was found; or the nearest, and that it must be tested.

use super::StencilPlace;
use crate::parts::Icon;
use crate::store::Store;
use crate::words;
use lastpull_core::quantity::Seconds;
use lastpull_core::screen::{
    Difference, EdgeForm, ExposureAnswer, ExposureAsked, ExposurePick, ExposureRow, Lamp, exposure_for,
};
use leptos::prelude::*;

/// What the shop knows for what is picked.
#[component]
pub fn Answer(pick: RwSignal<ExposurePick>) -> impl IntoView {
    let store = Store::from_context();
    let answer = Memo::new(move |_| {
        let asked = pick.get().asked()?;
        let lamp = store.shop.with(|shop| shop.stencils.lamp(asked.lamp).cloned()).unwrap_or_default();
        Some((asked, lamp, store.shop.with(|shop| exposure_for(shop, &asked))))
    });
    view! {
        <section class="card stencil-answer" id="answer" aria-live="polite">
            {move || match answer.get() {
                None => view! { <p class="lead">{words::exposure_mesh_wanted()}</p> }.into_any(),
                Some((_, _, ExposureAnswer::Known(row))) => known(&row).into_any(),
                Some((asked, lamp, ExposureAnswer::Nearest { row, differs, scaled })) => {
                    nearest(&asked, &lamp, &row, &differs, scaled).into_any()
                }
                Some((_, _, ExposureAnswer::Unknown)) => view! {
                    <p class="stencil-unknown"><Icon name="alert"/>{words::exposure_unknown()}</p>
                    {find(true)}
                }.into_any(),
            }}
        </section>
    }
}

/// A time, large.
pub fn time(time: Seconds) -> AnyView {
    view! {
        <p class="stencil-time">
            <strong>{words::exposure_seconds(time)}</strong>
            {words::exposure_clock(time).map(|clock| view! { " " <span>{clock}</span> })}
        </p>
    }
    .into_any()
}

fn find(first: bool) -> AnyView {
    let words = if first { words::exposure_find() } else { words::exposure_find_again() };
    view! { <a class="button" class:primary=first id="find" href=StencilPlace::Find.hash()>{words}</a> }.into_any()
}

fn known(row: &ExposureRow) -> AnyView {
    view! {
        {time(row.time)}
        {(!row.tested).then(|| view! { <p><span class="badge tight"><Icon name="alert"/>{words::exposure_not_tested()}</span></p> })}
        {told(row)}
        <div class="button-row">
            {find(!row.tested)}
            <a class="button quiet" href=StencilPlace::Found(row.id).hash()>{words::exposure_correct()}</a>
        </div>
    }.into_any()
}

/// How it was found, by whom and when.
fn told(row: &ExposureRow) -> AnyView {
    view! {
        <p>{words::found(row.found)}</p>
        {(!row.note.is_empty()).then(|| view! { <p class="stencil-note">{row.note.clone()}</p> })}
        <p class="muted">{found_by(row)}</p>
    }
    .into_any()
}

/// By whom and when.
pub fn found_by(row: &ExposureRow) -> String {
    let when = words::moment(row.at);
    row.by.clone().map_or(when.clone(), |who| words::who_when(who, when))
}

fn nearest(
    asked: &ExposureAsked,
    lamp: &Lamp,
    row: &ExposureRow,
    differs: &[Difference],
    scaled: Option<Seconds>,
) -> AnyView {
    let law = differs
        .contains(&Difference::Distance)
        .then(|| EdgeForm::default().light(lamp, words::units()).err())
        .flatten();
    view! {
        <p class="stencil-unknown"><Icon name="alert"/>{words::exposure_not_known()}</p>
        {scaled.map(|scaled| view! {
            <div class="stencil-scaled" id="scaled">
                <h3>{words::exposure_scaled(lamp.distance.map(words::length).unwrap_or_default())}</h3>
                {time(scaled)}
                <p>{words::exposure_scaled_text()}</p>
                <a class="button quiet" href=StencilPlace::FindFrom(row.id).hash()>{words::exposure_scaled_note()}</a>
            </div>
        })}
        <div class="stencil-nearest">
            <h3>{words::exposure_nearest()}</h3>
            {time(row.time)}
            <ul class="stencil-differs">
                {differs.iter().map(|difference| view! { <li>{differs_in(asked, lamp, row, *difference)}</li> }).collect_view()}
            </ul>
            {law.map(|law| view! { <p>{words::no_distance_law(law)}</p> })}
            {told(row)}
        </div>
        {find(true)}
    }.into_any()
}

fn differs_in(asked: &ExposureAsked, lamp: &Lamp, row: &ExposureRow, difference: Difference) -> String {
    let untold = || words::exposure_not_told().to_owned();
    let um = |um: Option<u16>| um.map_or_else(untold, |um| format!("{um}\u{a0}{}", words::exposure_um()));
    let dyed = |dyed: bool| if dyed { words::sheet_dyed() } else { words::exposure_white() }.to_owned();
    let (what, there, here) = match difference {
        Difference::Lamp => {
            let there = if row.lamp.is_empty() { words::exposure_gone().into() } else { row.lamp.clone() };
            (words::exposure_lamp(), there, lamp.name.clone())
        }
        Difference::Distance => (
            words::exposure_distance(),
            row.distance.map_or_else(untold, words::length),
            lamp.distance.map_or_else(untold, words::length),
        ),
        Difference::Dyed => (words::exposure_colour(), dyed(row.cloth.dyed), dyed(asked.cloth.dyed)),
        Difference::Count => {
            (words::screen_mesh(), words::mesh_count(row.cloth.count), words::mesh_count(asked.cloth.count))
        }
        Difference::Thread => (words::screen_form_thread(), um(row.cloth.thread_um), um(asked.cloth.thread_um)),
        Difference::Coats => (
            words::screen_coats(),
            row.coats.map_or_else(untold, words::coats),
            asked.coats.map_or_else(untold, words::coats),
        ),
    };
    if here == words::exposure_not_told() {
        return words::exposure_differs_untold(what, there);
    }
    words::exposure_differs(what, there, here)
}
