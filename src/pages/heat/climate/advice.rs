//! What the climate of the shop requires: heat level, water, work and rest.

use crate::components::{Choice, Icon};
use crate::i18n;
use lastpull_core::heat::{ClimateRow, ClimateView, HeatLevel, Schedule, WorkRest};
use leptos::prelude::*;

/// How hard the work is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Work {
    Light,
    Moderate,
    Heavy,
}

/// The advice for the last reading.
#[component]
pub fn ClimateAdvice(climate: Memo<ClimateView>) -> impl IntoView {
    move || {
        climate.with(|climate| {
            let Some(row) = &climate.now else {
                return view! { <p class="lead">{i18n::climate_none_text()}</p> }.into_any();
            };
            view! {
                {verdict(climate, row)}
                {row.old.then(|| view! { <p class="caution" id="room-old"><Icon name="clock"/>{i18n::climate_old()}</p> })}
                {climate.water.map(|water| view! { <p class="room-water" id="room-water"><Icon name="drop"/><span>{i18n::water(water)}</span></p> })}
            }.into_any()
        })
    }
}

/// The signs of heat illness: whatever the numbers say, since they leave out the heat of dryer and flash. Folded while
/// the risk is lower.
#[component]
pub fn Symptoms(climate: Memo<ClimateView>) -> impl IntoView {
    let calls = Memo::new(move |_| climate.with(|climate| climate.level.is_some_and(|level| level > HeatLevel::Lower)));
    view! {
        <details class="room-details" id="room-symptoms" open=move || calls.get()>
            <summary>{i18n::climate_symptoms_title()}</summary>
            <p class="caution"><Icon name="alert"/>{i18n::climate_symptoms()}</p>
        </details>
    }
}

/// Minutes of work and rest, and what these figures do not cover.
#[component]
pub fn WorkRestAdvice(climate: Memo<ClimateView>) -> impl IntoView {
    let work = RwSignal::new(Work::Moderate);
    move || {
        climate.with(|climate| {
            climate.work_rest.map(|table| {
                view! {
                    {rest(climate, table, work)}
                    {leaves_out(climate)}
                }
            })
        })
    }
}

/// Heat level, heat index, the reading and its age.
fn verdict(climate: &ClimateView, row: &ClimateRow) -> AnyView {
    let (tone, icon) = match climate.level {
        None => ("none", "info"),
        Some(HeatLevel::Lower) => ("good", "check"),
        Some(HeatLevel::Moderate) => ("tight", "heat"),
        Some(HeatLevel::High | HeatLevel::Extreme) => ("bad", "alert"),
    };
    let title = climate.level.map_or(i18n::climate_no_index(), i18n::heat_level);
    let feels = row.index.map(|index| {
        let feels = i18n::heat_index(index);
        if index.beyond_table { format!("{feels}, {}", i18n::climate_beyond()) } else { feels }
    });
    let read = i18n::climate_of(i18n::temperature(row.reading.temperature), u32::from(row.reading.humidity));
    view! {
        <section class=format!("room-now {tone}") id="room-now" class:old=row.old>
            <h2 id="room-level"><Icon name=icon/>{title}</h2>
            {feels.map(|feels| view! { <p class="room-feels" id="room-feels">{feels}</p> })}
            <p>{read}" · "{i18n::minutes_ago(row.age.whole_minutes())}</p>
            {climate.level.map(|level| view! { <p><strong>{i18n::heat_level_advice(level)}</strong></p> })}
        </section>
    }
    .into_any()
}

fn rest(climate: &ClimateView, table: WorkRest, work: RwSignal<Work>) -> AnyView {
    let options = vec![
        (Work::Light, i18n::work_light().to_owned()),
        (Work::Moderate, i18n::work_moderate().to_owned()),
        (Work::Heavy, i18n::work_heavy().to_owned()),
    ];
    let schedule = move || match work.get() {
        Work::Light => table.light,
        Work::Moderate => table.moderate,
        Work::Heavy => table.heavy,
    };
    let hint = move || match work.get() {
        Work::Light => i18n::work_light_hint(),
        Work::Moderate => i18n::work_moderate_hint(),
        Work::Heavy => i18n::work_heavy_hint(),
    };
    let assumed: Vec<&str> = climate.assumptions.iter().map(|one| i18n::assumption(*one)).collect();
    let edge = match (table.below_table, table.beyond_table) {
        (true, _) => Some(i18n::rest_below()),
        (_, true) => Some(i18n::rest_beyond()),
        _ => None,
    };
    view! {
        <section class="card room-rest">
            <h2>{i18n::rest_title()}</h2>
            <Choice label=i18n::rest_work() name="work" options value=work on_pick=Callback::new(move |picked| work.set(picked))/>
            <p class="quiet-line">{hint}</p>
            <p class="room-minutes" id="room-rest" class:bad=move || schedule() == Schedule::Caution>{move || i18n::schedule(schedule())}</p>
            {table.reason.map(|reason| view! { <p id="room-rest-why">{i18n::rest_reason(reason)}</p> })}
            {edge.map(|edge| view! { <p class="quiet-line">{edge}</p> })}
            <details class="room-details">
                <summary>{i18n::rest_assumes()}</summary>
                <p>{assumed.join(", ")}". "{i18n::rest_assumes_more()}</p>
            </details>
        </section>
    }.into_any()
}

fn leaves_out(climate: &ClimateView) -> AnyView {
    view! {
        <details class="room-details">
            <summary>{i18n::climate_leaves_out()}</summary>
            <ul class="heat-caveats">{climate.caveats.iter().map(|caveat| view! { <li>{i18n::climate_caveat(*caveat)}</li> }).collect::<Vec<_>>()}</ul>
            <p>{i18n::climate_guides()}</p>
        </details>
    }.into_any()
}

/// Earlier readings.
#[component]
pub fn EarlierReadings(climate: Memo<ClimateView>) -> impl IntoView {
    move || {
        climate.with(|climate| {
            (!climate.earlier.is_empty()).then(|| {
                let line = |row: &ClimateRow| {
                    let read =
                        i18n::climate_of(i18n::temperature(row.reading.temperature), u32::from(row.reading.humidity));
                    let when = i18n::moment(row.reading.at);
                    let when = row.reading.by.as_ref().map_or_else(|| when.clone(), |who| i18n::who_when(who, when.clone()));
                    let feels = row.index.map(i18n::heat_index);
                    view! { <li><span><strong>{read}</strong><small class="muted">{feels}</small></span><small class="muted">{when}</small></li> }
                };
                view! {
                    <details class="room-details">
                        <summary>{i18n::climate_earlier()}</summary>
                        <ul class="heat-list">{climate.earlier.iter().map(line).collect::<Vec<_>>()}</ul>
                    </details>
                }
            })
        })
    }
}
