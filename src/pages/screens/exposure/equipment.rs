//! The shop's lamps and emulsions, and its target step of the exposure guide.

use super::step_goal::StepGoal;
use crate::components::{Icon, Page};
use crate::i18n;
use crate::route::{ExposureRoute, Route};
use crate::store::Store;
use lastpull_core::screen::{EmulsionRow, Lamp, LampRow, emulsion_list, lamp_list};
use leptos::prelude::*;

/// Lamps and emulsions.
#[component]
pub fn EquipmentPage() -> impl IntoView {
    let store = Store::from_context();
    let lamps = Memo::new(move |_| store.shop.with(lamp_list));
    let emulsions = Memo::new(move |_| store.shop.with(emulsion_list));
    view! {
        <Page title=Signal::derive(|| i18n::stencil_equipment().to_owned()) up=Route::Exposure(ExposureRoute::Home) class="stencil-equipment">
            <section>
                <h2>{i18n::equipment_lamps()}</h2>
                {move || rows(lamps.with(|rows| rows.iter().map(lamp_line).collect()), i18n::equipment_lamps_none())}
                <a class="button with-icon" id="new-lamp" href=ExposureRoute::NewLamp.hash()><Icon name="plus"/>{i18n::lamp_new()}</a>
            </section>
            <section>
                <h2>{i18n::equipment_emulsions()}</h2>
                {move || rows(emulsions.with(|rows| rows.iter().map(emulsion_line).collect()), i18n::equipment_emulsions_none())}
                <a class="button with-icon" id="new-emulsion" href=ExposureRoute::NewEmulsion.hash()><Icon name="plus"/>{i18n::emulsion_new()}</a>
            </section>
            <StepGoal/>
            <p class="caution"><Icon name="alert"/>{i18n::exposure_caution()}</p>
        </Page>
    }
}

/// Target of a line, its name, its description, and the number of its exposures.
type Line = (ExposureRoute, String, String, usize);

fn lamp_line(row: &LampRow) -> Line {
    (ExposureRoute::Lamp(row.id), row.lamp.name.clone(), lamp_text(&row.lamp), row.exposures)
}

fn lamp_text(lamp: &Lamp) -> String {
    let kind = i18n::lamp_kind_name(lamp.kind);
    lamp.distance.map_or_else(|| kind.to_owned(), |distance| format!("{kind} · {}", i18n::length(distance)))
}

fn emulsion_line(row: &EmulsionRow) -> Line {
    let family = i18n::emulsion_family_name(row.emulsion.family);
    let solids = row.emulsion.solids.map(|percent| format!(" · {percent}{}", i18n::percent_sign())).unwrap_or_default();
    (ExposureRoute::Emulsion(row.id), row.emulsion.name.clone(), format!("{family}{solids}"), row.exposures)
}

fn rows(lines: Vec<Line>, none: &'static str) -> AnyView {
    if lines.is_empty() {
        return view! { <p class="quiet-line">{none}</p> }.into_any();
    }
    let line = |(route, name, text, times): Line| {
        view! {
            <li>
                <a class="stencil-row" href=route.hash()>
                    <span class="row-words">
                        <strong>{name}</strong>
                        <span class="muted">{text}</span>
                        <span class="muted">{i18n::equipment_times(times as u32)}</span>
                    </span>
                    <Icon name="next"/>
                </a>
            </li>
        }
    };
    view! { <ul class="stencil-list">{lines.into_iter().map(line).collect_view()}</ul> }.into_any()
}
