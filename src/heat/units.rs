//! The shop's dryers and flash units, and how far each lies from its setting.

use super::HeatPlace;
use crate::parts::{Empty, Icon, Page};
use crate::place::Place;
use crate::store::Store;
use crate::words;
use lastpull_core::heat::{Heater, SensorReading, unit_list};
use lastpull_core::journal::Subject;
use leptos::prelude::*;

/// The list.
#[component]
pub fn UnitsScreen() -> impl IntoView {
    let store = Store::from_context();
    let units = Memo::new(move |_| {
        store.shop.with(|shop| unit_list(shop).into_iter().map(|(id, unit)| (id, unit.clone())).collect::<Vec<_>>())
    });
    let add = || {
        view! { <a class="button primary with-icon" href=HeatPlace::NewUnit.hash()><Icon name="plus"/>{words::unit_add()}</a> }
    };
    view! {
        <Page title=Signal::derive(|| words::units_title().to_owned()) up=Place::Heat(HeatPlace::Home) class="heat">
            {move || units.with(|units: &Vec<(Subject, Heater)>| if units.is_empty() {
                view! { <Empty icon="heat" title=words::units_none_title() text=words::units_none_text()>{add()}</Empty> }.into_any()
            } else {
                view! {
                    <ul class="heat-cards">{units.iter().map(|(id, unit)| card(*id, unit)).collect::<Vec<_>>()}</ul>
                    {add()}
                    <p class="caution"><Icon name="heat"/>{words::heat_caution()}</p>
                }.into_any()
            })}
        </Page>
    }
}

/// What was measured, by what, at which setting, when.
pub fn reading_words(reading: &SensorReading) -> (String, String) {
    let how = words::measured_how(
        words::sensor_method(reading.method),
        words::temperature(reading.setting),
        words::moment(reading.at),
    );
    (words::dryer_error(reading.offset()), how)
}

fn card(id: Subject, unit: &Heater) -> AnyView {
    let belt = match (unit.slowest, unit.fastest) {
        (Some(slow), Some(fast)) => Some(words::belt_range(words::belt(slow), words::belt(fast))),
        (Some(slow), None) => Some(words::belt_from(words::belt(slow))),
        (None, Some(fast)) => Some(words::belt_up_to(words::belt(fast))),
        (None, None) => None,
    };
    let (error, how) = unit.reading().map_or_else(
        || {
            (
                words::error_none().to_owned(),
                if unit.is_dryer() { words::error_none_hint().to_owned() } else { String::new() },
            )
        },
        reading_words,
    );
    let name = unit.name.clone();
    let line = |name: &'static str, value: String| view! { <div><dt>{name}</dt><dd>{value}</dd></div> };
    view! {
        <li class="card">
            <h2>{unit.name.clone()}<small class="muted">{words::unit_kind_of(unit.kind)}</small></h2>
            <dl class="lines">
                {unit.heated_length.map(|length| line(words::unit_heated(), words::length(length)))}
                {belt.map(|belt| line(words::belt_runs(), belt))}
                <div><dt>{words::unit_error()}</dt><dd>{error}<small class="muted">{how}</small></dd></div>
            </dl>
            {(!unit.notes.is_empty()).then(|| view! { <p class="job-notes">{unit.notes.clone()}</p> })}
            <div class="button-row">
                <a class="button" class:primary=unit.is_dryer() && unit.reading().is_none() href=HeatPlace::Measure(id).hash() aria-label=format!("{}: {name}", words::measure())>{words::measure()}</a>
                <a class="button" href=HeatPlace::Unit(id).hash() aria-label=format!("{}: {name}", words::edit())>{words::edit()}</a>
            </div>
        </li>
    }.into_any()
}
