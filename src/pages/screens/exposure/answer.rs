//! The exposure time, large, and how it was found; or the nearest known time, which must be tested.

use crate::components::Icon;
use crate::i18n;
use crate::route::ExposureRoute;
use crate::store::Store;
use lastpull_core::screen::{
    ExposureAnswer, ExposureChoice, ExposureDifference, ExposureQuery, ExposureRow, FrameSizeForm, Lamp, exposure_for,
};
use lastpull_core::units::Seconds;
use leptos::prelude::*;

/// The answer for a query.
#[component]
pub fn Answer(pick: RwSignal<ExposureChoice>) -> impl IntoView {
    let store = Store::from_context();
    let answer = Memo::new(move |_| {
        let asked = pick.get().query()?;
        let lamp = store.shop.with(|shop| shop.exposure_log.lamp(asked.lamp).cloned()).unwrap_or_default();
        Some((asked, lamp, store.shop.with(|shop| exposure_for(shop, &asked))))
    });
    view! {
        <section class="card stencil-answer" id="answer" aria-live="polite">
            {move || match answer.get() {
                None => view! { <p class="lead">{i18n::exposure_mesh_wanted()}</p> }.into_any(),
                Some((_, _, ExposureAnswer::Known(row))) => known(&row).into_any(),
                Some((asked, lamp, ExposureAnswer::Nearest { row, differs, scaled })) => {
                    nearest(&asked, &lamp, &row, &differs, scaled).into_any()
                }
                Some((_, _, ExposureAnswer::Unknown)) => view! {
                    <p class="stencil-unknown"><Icon name="alert"/>{i18n::exposure_unknown()}</p>
                    {find(true)}
                }.into_any(),
            }}
        </section>
    }
}

/// An exposure time, large.
pub fn time(time: Seconds) -> AnyView {
    view! {
        <p class="stencil-time">
            <strong>{i18n::exposure_seconds(time)}</strong>
            {i18n::exposure_clock(time).map(|clock| view! { " " <span>{clock}</span> })}
        </p>
    }
    .into_any()
}

fn find(first: bool) -> AnyView {
    let words = if first { i18n::exposure_find() } else { i18n::exposure_find_again() };
    view! { <a class="button" class:primary=first id="find" href=ExposureRoute::NewTest.hash()>{words}</a> }.into_any()
}

fn known(row: &ExposureRow) -> AnyView {
    view! {
        {time(row.time)}
        {(!row.tested).then(|| view! { <p><span class="badge tight"><Icon name="alert"/>{i18n::exposure_not_tested()}</span></p> })}
        {basis(row)}
        <div class="button-row">
            {find(!row.tested)}
            <a class="button quiet" href=ExposureRoute::Test(row.id).hash()>{i18n::exposure_correct()}</a>
        </div>
    }.into_any()
}

/// How it was found, by whom and when.
fn basis(row: &ExposureRow) -> AnyView {
    view! {
        <p>{i18n::found(row.found)}</p>
        {(!row.note.is_empty()).then(|| view! { <p class="stencil-note">{row.note.clone()}</p> })}
        <p class="muted">{found_by(row)}</p>
    }
    .into_any()
}

/// By whom and when.
pub fn found_by(row: &ExposureRow) -> String {
    let when = i18n::moment(row.at);
    row.by.clone().map_or(when.clone(), |who| i18n::who_when(who, when))
}

fn nearest(
    asked: &ExposureQuery,
    lamp: &Lamp,
    row: &ExposureRow,
    differs: &[ExposureDifference],
    scaled: Option<Seconds>,
) -> AnyView {
    let law = differs
        .contains(&ExposureDifference::Distance)
        .then(|| FrameSizeForm::default().light(lamp, i18n::units()).err())
        .flatten();
    view! {
        <p class="stencil-unknown"><Icon name="alert"/>{i18n::exposure_not_known()}</p>
        {scaled.map(|scaled| view! {
            <div class="stencil-scaled" id="scaled">
                <h3>{i18n::exposure_scaled(lamp.distance.map(i18n::length).unwrap_or_default())}</h3>
                {time(scaled)}
                <p>{i18n::exposure_scaled_text()}</p>
                <a class="button quiet" href=ExposureRoute::NewTestFrom(row.id).hash()>{i18n::exposure_scaled_note()}</a>
            </div>
        })}
        <div class="stencil-nearest">
            <h3>{i18n::exposure_nearest()}</h3>
            {time(row.time)}
            <ul class="stencil-differs">
                {differs.iter().map(|difference| view! { <li>{differs_in(asked, lamp, row, *difference)}</li> }).collect_view()}
            </ul>
            {law.map(|law| view! { <p>{i18n::no_distance_law(law)}</p> })}
            {basis(row)}
        </div>
        {find(true)}
    }.into_any()
}

fn differs_in(asked: &ExposureQuery, lamp: &Lamp, row: &ExposureRow, difference: ExposureDifference) -> String {
    let unrecorded = || i18n::exposure_not_recorded().to_owned();
    let um = |um: Option<u16>| um.map_or_else(unrecorded, |um| format!("{um}\u{a0}{}", i18n::exposure_um()));
    let dyed = |dyed: bool| if dyed { i18n::sheet_dyed() } else { i18n::exposure_white() }.to_owned();
    let (what, there, here) = match difference {
        ExposureDifference::Lamp => {
            let there = if row.lamp.is_empty() { i18n::exposure_gone().into() } else { row.lamp.clone() };
            (i18n::exposure_lamp(), there, lamp.name.clone())
        }
        ExposureDifference::Distance => (
            i18n::exposure_distance(),
            row.distance.map_or_else(unrecorded, i18n::length),
            lamp.distance.map_or_else(unrecorded, i18n::length),
        ),
        ExposureDifference::Dyed => (i18n::exposure_colour(), dyed(row.cloth.dyed), dyed(asked.cloth.dyed)),
        ExposureDifference::Count => {
            (i18n::screen_mesh(), i18n::mesh_count(row.cloth.count), i18n::mesh_count(asked.cloth.count))
        }
        ExposureDifference::Thread => (i18n::screen_form_thread(), um(row.cloth.thread_um), um(asked.cloth.thread_um)),
        ExposureDifference::Coats => (
            i18n::screen_coats(),
            row.coats.map_or_else(unrecorded, i18n::coats),
            asked.coats.map_or_else(unrecorded, i18n::coats),
        ),
    };
    if here == i18n::exposure_not_recorded() {
        return i18n::exposure_differs_unrecorded(what, there);
    }
    i18n::exposure_differs(what, there, here)
}
