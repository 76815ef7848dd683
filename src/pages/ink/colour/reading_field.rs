//! Entering a colour: from an instrument, as a screen colour, or from a photo.

use super::lab_inputs::LabInputs;
use super::photo_reading::PhotoReadingInput;
use super::photo_reference::PhotoReferenceInput;
use super::photo_subject::PhotoOf;
use super::reading::Reading;
use crate::components::Choice;
use crate::i18n;
use lastpull_core::colour::{Colour, Lab};
use lastpull_core::ink::{ColourReading, ReadBy, lab_of, reading_of};
use leptos::prelude::*;

/// A field for a colour.
#[component]
pub fn ReadingField(
    /// Element id, unique on the page.
    name: &'static str,
    /// Label.
    #[prop(into)]
    label: String,
    /// The value.
    reading: RwSignal<Reading>,
    /// The known colour to which a photo's difference is added.
    #[prop(optional, into)]
    known: Option<Signal<Option<ColourReading>>>,
    /// What a photo would show; `None` for no photo. All but a swatch need a known colour; a pot's photo may bring its
    /// target, and a drawdown's photo asks what is beside it.
    #[prop(optional)]
    photo: Option<PhotoOf>,
) -> impl IntoView {
    let begun = reading.with_untracked(|reading| reading.value);
    let by = RwSignal::new(begun.map_or(ReadBy::Instrument, |reading| reading.by));
    let is_known = leptos::reactive::graph::untrack(|| known.is_some_and(|known| known.get().is_some()));
    let may = is_known || matches!(photo, Some(PhotoOf::Swatch | PhotoOf::Drawdown(_)));
    let no_photo = photo.filter(|_| !may).map(PhotoOf::lacks);
    let ways = ReadBy::ALL.into_iter().filter(|by| may || *by != ReadBy::Photo).map(|by| {
        let words = match by {
            ReadBy::Instrument => i18n::colour_from_instrument(),
            ReadBy::Photo => i18n::colour_from_photo(),
            ReadBy::Screen => i18n::colour_from_screen(),
        };
        (by, words.to_owned())
    });
    let ways: Vec<(ReadBy, String)> = ways.collect();
    let pick = move |way: ReadBy| {
        by.set(way);
        reading.set(Reading::default());
    };
    view! {
        <div class="colour-reading" id=name role="group" aria-label=label>
            <Choice label=i18n::colour_read_from() name=name options=ways value=Signal::from(by) on_pick=Callback::new(pick)/>
            {no_photo.map(|why| view! { <p class="quiet-line">{why}</p> })}
            {move || match by.get() {
                ReadBy::Instrument => view! { <LabInputs name reading hint=i18n::colour_lab_hint()/> }.into_any(),
                ReadBy::Screen => view! { <ScreenInput name reading/> }.into_any(),
                ReadBy::Photo => match photo.unwrap_or_default() {
                    PhotoOf::Drawdown(component) => view! { <PhotoReferenceInput component reading/> }.into_any(),
                    of @ (PhotoOf::Swatch | PhotoOf::Garment | PhotoOf::Target) => {
                        let known = Signal::derive(move || known.and_then(|known| known.get()));
                        view! { <PhotoReadingInput known of reading/> }.into_any()
                    }
                },
            }}
            {move || reading.with(|reading| reading.value).filter(|value| value.by != ReadBy::Photo).map(|value| {
                let colour = lab_of(value).to_colour().to_string();
                view! { <span class="colour-got" aria-hidden="true" style:background-color=colour></span> }
            })}
        </div>
    }
}

/// The browser's colour input.
#[component]
fn ScreenInput(name: &'static str, reading: RwSignal<Reading>) -> impl IntoView {
    let begun = reading.with_untracked(|reading| reading.value).filter(|value| value.by == ReadBy::Screen);
    let text = RwSignal::new(begun.map(|value| lab_of(value).to_colour().to_string()).unwrap_or_default());
    let set = move |typed: String| {
        let trimmed = typed.trim().to_ascii_lowercase();
        let hex = if trimmed.starts_with('#') { trimmed.clone() } else { format!("#{trimmed}") };
        let colour = Colour::from_hex(&hex);
        let value = colour.map(|colour| reading_of(Lab::of(colour), ReadBy::Screen));
        reading.set(Reading { value, wrong: value.is_none() && !trimmed.is_empty(), ..Reading::default() });
        text.set(typed);
    };
    let hex = format!("{name}-hex");
    let picker = format!("{name}-picker");
    view! {
        <div class="field-pair colour-pair">
            <div class="field">
                <label for=picker.clone()>{i18n::colour_screen_label()}</label>
                <input
                    id=picker
                    type="color"
                    prop:value=move || Colour::from_hex(text.get().trim()).map_or_else(|| "#808080".to_owned(), |colour| colour.to_string())
                    on:input=move |event| set(event_target_value(&event))
                />
            </div>
            <div class="field" class:wrong=move || reading.with(|reading| reading.wrong)>
                <label for=hex.clone()>{i18n::colour_hex()}</label>
                <input id=hex type="text" autocomplete="off" spellcheck="false" prop:value=move || text.get() on:input=move |event| set(event_target_value(&event)) aria-describedby=format!("{name}-help")/>
            </div>
        </div>
        <p class="field-help" id=format!("{name}-help")>
            {move || if reading.with(|reading| reading.wrong) {
                view! { <span class="problem">{i18n::colour_hex_wrong()}</span> }.into_any()
            } else {
                view! { <span>{i18n::colour_screen_hint()}</span> }.into_any()
            }}
        </p>
    }
}
