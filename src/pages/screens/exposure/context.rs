//! Context of an exposure time: the room's humidity, and how evenly the lamp shines.

use crate::components::Icon;
use crate::forms::{Field, Kind, bound};
use crate::i18n;
use crate::route::{HeatRoute, Route};
use crate::store::Store;
use lastpull_core::screen::{ExposureChoice, FrameSizeForm, HumidityEffect, room_humidity};
use leptos::prelude::*;

/// What the room's humidity means for the chosen emulsion.
#[component]
pub fn HumidityNote(pick: RwSignal<ExposureChoice>) -> impl IntoView {
    let store = Store::from_context();
    let damp = store.every_minute(move |shop, clock| {
        let emulsion = pick.with(|pick| pick.emulsion)?;
        room_humidity(shop, emulsion, clock.now)
    });
    move || {
        damp.get().map(|damp| {
            let (icon, class) = match damp.note {
                HumidityEffect::Dry => ("check", "stencil-damp good"),
                HumidityEffect::NotRead => ("info", "stencil-damp"),
                HumidityEffect::MoreTime | HumidityEffect::LessTimeButWeak => ("alert", "stencil-damp tight"),
            };
            view! {
                <section class=class id="damp" aria-label=i18n::damp_title()>
                    <p><Icon name=icon/><span>{i18n::damp(damp)}</span></p>
                    {(damp.note == HumidityEffect::NotRead).then(|| view! {
                        <a class="button" href=Route::Heat(HeatRoute::Climate).hash()>{i18n::damp_read()}</a>
                    })}
                </section>
            }
        })
    }
}

/// How much less light reaches the corners of a frame; for a lamp without a law of distance, a text that says so.
#[component]
pub fn CornerFalloff(pick: RwSignal<ExposureChoice>) -> impl IntoView {
    let store = Store::from_context();
    let form = RwSignal::new(FrameSizeForm::default());
    let units = i18n::units();
    let lamp = Memo::new(move |_| {
        let id = pick.with(|pick| pick.lamp)?;
        store.shop.with(|shop| shop.exposure_log.lamp(id).cloned())
    });
    let refused = Memo::new(move |_| {
        lamp.with(|lamp| lamp.as_ref().and_then(|lamp| FrameSizeForm::default().light(lamp, units).err()).is_some())
    });
    // Only an unreadable number is a problem; an empty field is not.
    let problems = Memo::new(move |_| {
        let mut found = form.with(|form| form.check(units)).err().unwrap_or_default();
        form.with(|form| {
            for (field, text) in [("width", &form.width), ("length", &form.length)] {
                if text.trim().is_empty() {
                    found.remove(&field);
                }
            }
        });
        found
    });
    let light = move || {
        lamp.with(|lamp| form.with(|form| lamp.as_ref().and_then(|lamp| form.light(lamp, units).ok().flatten())))
    };
    view! {
        <details class="stencil-fold" id="edge">
            <summary>{i18n::edge_title()}</summary>
            {move || if refused.get() {
                view! { <p>{i18n::edge_refused()}</p> }.into_any()
            } else {
                view! {
                    <p>{i18n::edge_text()}</p>
                    <div class="field-pair">
                        <Field label=i18n::edge_width() kind=Kind::Length unit=i18n::unit_length() bound=bound!(form.width) problems/>
                        <Field label=i18n::edge_length() kind=Kind::Length unit=i18n::unit_length() bound=bound!(form.length) problems/>
                    </div>
                    <p aria-live="polite" id="edge-answer">{move || light().map(|light| {
                        let percent = |share: f64| i18n::number(share * 100.0, 0);
                        i18n::edge_answer(percent(light.bulb_loss), percent(light.flat_loss))
                    })}</p>
                }.into_any()
            }}
        </details>
    }
}
