//! Overview of the heat pages: the climate first, then the records of the shop, each with its state.

use crate::components::{Icon, Page};
use crate::i18n;
use crate::route::{HeatRoute, MoreRoute, Route};
use crate::store::Store;
use lastpull_core::heat::{
    climate_view, fabric_limits, heater_list, inks_without_sheet, settling_log, sheet_list, teaches_pace, tests_due,
    trial_log,
};
use leptos::prelude::*;

/// The page.
#[component]
pub fn HeatHomePage() -> impl IntoView {
    let store = Store::from_context();
    let lines = Memo::new(move |_| lines(store));
    view! {
        <Page title=Signal::derive(|| i18n::heat_title().to_owned()) up=Route::More(MoreRoute::Menu) class="heat">
            {move || view! {
                <ul class="menu">{lines.get().into_iter().map(|line| view! { <Row line/> }).collect::<Vec<_>>()}</ul>
            }}
            <p class="caution"><Icon name="heat"/>{i18n::heat_caution()}</p>
            <p class="quiet-line">{i18n::heat_no_promise()}</p>
        </Page>
    }
}

/// A menu line: its target, icon, name, state, and whether the state needs attention.
type Line = (HeatRoute, &'static str, &'static str, String, bool);

fn lines(store: Store) -> Vec<Line> {
    let now = store.clock.get_untracked().now;
    store.shop.with(|shop| {
        let climate = climate_view(shop, now);
        let climate_line = match (&climate.now, climate.level) {
            (Some(row), Some(level)) if !row.old => {
                format!("{} · {}", i18n::heat_level(level), i18n::minutes_ago(row.age.whole_minutes()))
            }
            (Some(_), _) => i18n::climate_old().into(),
            (None, _) => i18n::climate_none_title().into(),
        };
        let units = heater_list(shop);
        let unmeasured = units.iter().any(|(_, unit)| unit.is_dryer() && unit.latest_reading().is_none());
        let names: Vec<&str> = units.iter().map(|(_, unit)| unit.name.as_str()).collect();
        let unit_line = if unmeasured {
            format!("{}, {}", names.join(", "), i18n::error_none())
        } else if names.is_empty() {
            i18n::units_none_title().into()
        } else {
            names.join(", ")
        };
        let wanted = inks_without_sheet(shop).len() as u32;
        let sheets = i18n::sheets_count(sheet_list(shop).len() as u32);
        let sheet_line = if wanted > 0 { format!("{sheets} · {}", i18n::sheets_missing(wanted)) } else { sheets };
        let due = tests_due(shop).len() as u32;
        let test_line = if due > 0 { i18n::tests_due_count(due) } else { i18n::tests_none_due().into() };
        let own = fabric_limits(shop).iter().filter(|limit| limit.instead_of.is_some()).count() as u32;
        let limit_line = if own > 0 { i18n::limits_own(own) } else { i18n::limits_short().into() };
        let climate_calls = climate.level.is_some_and(|level| level > lastpull_core::heat::HeatLevel::Lower);
        vec![
            (HeatRoute::Climate, "sun", i18n::climate_title(), climate_line, climate_calls),
            (HeatRoute::Dryers, "heat", i18n::units_title(), unit_line, unmeasured || units.is_empty()),
            (HeatRoute::Sheets, "jobs", i18n::sheets_title(), sheet_line, wanted > 0),
            (HeatRoute::Limits, "shirt", i18n::limits_title(), limit_line, false),
            (HeatRoute::Tests, "drop", i18n::tests_title(), test_line, due > 0),
            (HeatRoute::Trials, "edit", i18n::trials_title(), i18n::trials_count(trial_log(shop).len() as u32), false),
            (
                HeatRoute::SettlingTimes,
                "clock",
                i18n::settlings_title(),
                i18n::settlings_count(settling_log(shop).iter().filter(|(_, one)| teaches_pace(one)).count() as u32),
                false,
            ),
        ]
    })
}

#[component]
fn Row(line: Line) -> impl IntoView {
    let (route, icon, title, text, calls) = line;
    view! {
        <li>
            <a class="menu-row" href=route.hash()>
                <Icon name=icon/>
                <span class="row-words"><strong>{title}</strong><span class=if calls { "heat-calls" } else { "muted" }>{text}</span></span>
                <Icon name="next"/>
            </a>
        </li>
    }
}
