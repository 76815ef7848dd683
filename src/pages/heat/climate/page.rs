//! The climate of the shop: entering a reading, and the advice for it.

use super::advice::{ClimateAdvice, EarlierReadings, Symptoms, WorkRestAdvice};
use crate::components::{Icon, Page, RepeatedTap};
use crate::forms::{Bound, FormSubmit, bound, problem_text};
use crate::i18n::{self, Term};
use crate::pages::help::help;
use crate::platform::ids;
use crate::route::{HeatRoute, Route};
use crate::store::Store;
use lastpull_core::facts::Fact;
use lastpull_core::form::Problems;
use lastpull_core::heat::{ClimateForm, ClimateView, climate_view};
use lastpull_core::units::{Temperature, TemperatureUnit, parse_number};
use leptos::prelude::*;

/// The page.
#[component]
pub fn ClimatePage() -> impl IntoView {
    let store = Store::from_context();
    let climate = store.every_minute(move |shop, clock| climate_view(shop, clock.now));
    view! {
        <Page title=Signal::derive(|| i18n::climate_title().to_owned()) up=Route::Heat(HeatRoute::Home) aside=help(Term::HeatIndex) class="room">
            <ClimateAdvice climate/>
            <Symptoms climate/>
            <Read climate/>
            <WorkRestAdvice climate/>
            <EarlierReadings climate/>
        </Page>
    }
}

/// The form of a reading: two numbers, each with buttons for one step down and up.
#[component]
fn Read(climate: Memo<ClimateView>) -> impl IntoView {
    let store = Store::from_context();
    let units = i18n::units();
    // Start from the last reading, since most are near it.
    let start = climate.with_untracked(|climate| {
        climate.now.as_ref().map(|row| ClimateForm::of(&row.reading, units)).unwrap_or_default()
    });
    let form = RwSignal::new(start);
    let id = RwSignal::new(ids::new_id());
    let submit = FormSubmit::new(Box::new(move || {
        let by = store.operator();
        let fact = form.with(|form| form.check(units, by))?;
        Ok(vec![(id.get_untracked(), Fact::Heat(fact))])
    }));
    let problems = submit.problems;
    let tap = RepeatedTap::new();
    let noted_last = StoredValue::new(None::<ClimateForm>);
    // The next reading is a new one; the one just recorded can be undone.
    let send = move |event: leptos::ev::SubmitEvent| {
        let typed = form.get_untracked();
        if tap.is_second(&event) && noted_last.with_value(|last| last.as_ref() == Some(&typed)) {
            return event.prevent_default();
        }
        tap.done(&event);
        let read = id.get_untracked();
        let noted = move || {
            store.notify_with_undo(i18n::reading_noted(), vec![(read, Fact::Deleted)]);
            noted_last.set_value(Some(typed));
            id.set(ids::new_id());
        };
        submit.submit_then(store, &event, Box::new(noted));
    };
    let (first, step) = match units.temperature {
        TemperatureUnit::Fahrenheit => (80.0, 1.0),
        TemperatureUnit::Celsius => (27.0, 0.5),
    };
    view! {
        <section class="card room-read">
            <h2>{i18n::climate_read()}</h2>
            <p class="quiet-line">{i18n::climate_read_text()}</p>
            <form on:submit=send novalidate=true>
                <Stepper label=i18n::climate_temperature() unit=i18n::unit_temperature() bound=bound!(form.temperature) problems first step/>
                <Stepper label=i18n::climate_humidity() unit="%" bound=bound!(form.humidity) problems first=50.0 step=1.0/>
                <button type="submit" class="button huge primary" id="room-save" disabled=submit.busy>{i18n::climate_save()}</button>
            </form>
        </section>
    }
}

/// A number with buttons for one step down and up.
#[component]
fn Stepper(
    label: &'static str,
    unit: &'static str,
    bound: Bound,
    problems: RwSignal<Problems>,
    first: f64,
    step: f64,
) -> impl IntoView {
    let name = bound.name;
    let problem = move || problem_text(problems, name);
    let read = move |text: &str| match name {
        // It may have its unit.
        "temperature" => {
            Temperature::parse(text, -1_000.0, 1_000.0, i18n::units()).map(|read| read.in_units(i18n::units()))
        }
        _ => parse_number(text, -1_000.0, 1_000.0),
    };
    let by = move |by: f64| {
        let text = bound.value.get_untracked();
        // Text that is not a number is left for the form's validation.
        if text.trim().is_empty() {
            bound.set.run(i18n::with_mark(i18n::number(first, 1)));
        } else if let Ok(value) = read(&text) {
            bound.set.run(i18n::with_mark(i18n::number(value + by, 1)));
        }
    };
    view! {
        <div class="field stepper" class:wrong=move || problem().is_some()>
            <label for=name>{label}</label>
            <div class="stepper-row">
                <button type="button" class="button" aria-label=i18n::climate_less(label) data-step=format!("{name}-less") on:click=move |_| by(-step)><Icon name="minus"/></button>
                <span class="field-input">
                    <input
                        id=name
                        name=name
                        type="text"
                        inputmode="decimal"
                        autocomplete="off"
                        prop:value=move || i18n::with_mark(bound.value.get())
                        on:input=move |event| bound.set.run(i18n::with_mark(event_target_value(&event)))
                        aria-invalid=move || problem().is_some().to_string()
                        aria-describedby=format!("{name}-help")
                    />
                    <span class="unit">{unit}</span>
                </span>
                <button type="button" class="button" aria-label=i18n::climate_more(label) data-step=format!("{name}-more") on:click=move |_| by(step)><Icon name="plus"/></button>
            </div>
            <p class="field-help" id=format!("{name}-help")>{move || problem().map(|problem| view! { <span class="problem">{problem}</span> })}</p>
        </div>
    }
}
