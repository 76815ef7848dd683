//! The shop's dryers and flash units, and the measured error of each.

use crate::components::{Empty, Icon, Page};
use crate::i18n::{self, Term};
use crate::pages::help::help;
use crate::route::{HeatRoute, Route};
use crate::store::Store;
use lastpull_core::heat::{Heater, SensorReading, heater_list};
use lastpull_core::ids::Subject;
use leptos::prelude::*;

/// The list.
#[component]
pub fn DryersPage() -> impl IntoView {
    let store = Store::from_context();
    let units = Memo::new(move |_| {
        store.shop.with(|shop| heater_list(shop).into_iter().map(|(id, unit)| (id, unit.clone())).collect::<Vec<_>>())
    });
    let add = || {
        view! { <a class="button primary with-icon" href=HeatRoute::NewDryer.hash()><Icon name="plus"/>{i18n::unit_add()}</a> }
    };
    view! {
        <Page title=Signal::derive(|| i18n::units_title().to_owned()) up=Route::Heat(HeatRoute::Home) aside=help(Term::DryerOffset) class="heat">
            {move || units.with(|units: &Vec<(Subject, Heater)>| if units.is_empty() {
                view! { <Empty icon="heat" title=i18n::units_none_title() text=i18n::units_none_text()>{add()}</Empty> }.into_any()
            } else {
                view! {
                    <ul class="heat-cards">{units.iter().map(|(id, unit)| card(*id, unit)).collect::<Vec<_>>()}</ul>
                    {add()}
                    <p class="caution"><Icon name="heat"/>{i18n::heat_caution()}</p>
                }.into_any()
            })}
            <p class="caution"><Icon name="alert"/>{i18n::caution_power_and_fumes()}</p>
        </Page>
    }
}

/// A measurement: value and sensor, then setting and time.
pub fn reading_words(reading: &SensorReading) -> (String, String) {
    let how = i18n::measured_how(
        i18n::sensor_method(reading.method),
        i18n::temperature(reading.setting),
        i18n::moment(reading.at),
    );
    (i18n::dryer_error(reading.offset()), how)
}

fn card(id: Subject, unit: &Heater) -> AnyView {
    let belt = match (unit.slowest, unit.fastest) {
        (Some(slow), Some(fast)) => Some(i18n::belt_range(i18n::belt(slow), i18n::belt(fast))),
        (Some(slow), None) => Some(i18n::belt_from(i18n::belt(slow))),
        (None, Some(fast)) => Some(i18n::belt_up_to(i18n::belt(fast))),
        (None, None) => None,
    };
    let (error, how) = unit.latest_reading().map_or_else(
        || {
            (
                i18n::error_none().to_owned(),
                if unit.is_dryer() { i18n::error_none_hint().to_owned() } else { String::new() },
            )
        },
        reading_words,
    );
    let name = unit.name.clone();
    let line = |name: &'static str, value: String| view! { <div><dt>{name}</dt><dd>{value}</dd></div> };
    view! {
        <li class="card">
            <h2>{unit.name.clone()}<small class="muted">{i18n::unit_kind_of(unit.kind)}</small></h2>
            <dl class="lines">
                {unit.heated_length.map(|length| line(i18n::unit_heated(), i18n::length(length)))}
                {belt.map(|belt| line(i18n::belt_runs(), belt))}
                <div><dt>{i18n::unit_error()}</dt><dd>{error}<small class="muted">{how}</small></dd></div>
            </dl>
            {(!unit.notes.is_empty()).then(|| view! { <p class="job-notes">{unit.notes.clone()}</p> })}
            <div class="button-row">
                <a class="button" class:primary=unit.is_dryer() && unit.latest_reading().is_none() href=HeatRoute::Measure(id).hash() aria-label=format!("{}: {name}", i18n::measure())>{i18n::measure()}</a>
                <a class="button" href=HeatRoute::Dryer(id).hash() aria-label=format!("{}: {name}", i18n::edit())>{i18n::edit()}</a>
            </div>
        </li>
    }.into_any()
}
