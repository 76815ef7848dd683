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
pub fn ClimateAdvice(room: Memo<ClimateView>) -> impl IntoView {
    move || {
        room.with(|room| {
            let Some(row) = &room.now else {
                return view! { <p class="lead">{i18n::room_none_text()}</p> }.into_any();
            };
            view! {
                {verdict(room, row)}
                {row.old.then(|| view! { <p class="caution" id="room-old"><Icon name="clock"/>{i18n::room_old()}</p> })}
                {room.water.map(|water| view! { <p class="room-water" id="room-water"><Icon name="drop"/><span>{i18n::water(water)}</span></p> })}
                {room.level.filter(|level| *level > HeatLevel::Lower).map(|_| view! { <p class="caution"><Icon name="alert"/>{i18n::room_symptoms()}</p> })}
            }.into_any()
        })
    }
}

/// Minutes of work and rest, and what these figures do not cover.
#[component]
pub fn WorkRestAdvice(room: Memo<ClimateView>) -> impl IntoView {
    let work = RwSignal::new(Work::Moderate);
    move || {
        room.with(|room| {
            room.work_rest.map(|table| {
                view! {
                    {rest(room, table, work)}
                    {leaves_out(room)}
                }
            })
        })
    }
}

/// Heat level, heat index, the reading and its age.
fn verdict(room: &ClimateView, row: &ClimateRow) -> AnyView {
    let (tone, icon) = match room.level {
        None => ("none", "info"),
        Some(HeatLevel::Lower) => ("good", "check"),
        Some(HeatLevel::Moderate) => ("tight", "heat"),
        Some(HeatLevel::High | HeatLevel::Extreme) => ("bad", "alert"),
    };
    let title = room.level.map_or(i18n::room_no_index(), i18n::heat_level);
    let feels = row.index.map(|index| {
        let feels = i18n::room_feels(i18n::temperature(index.temperature()));
        if index.beyond_table { format!("{feels}, {}", i18n::room_beyond()) } else { feels }
    });
    let read = i18n::room_of(i18n::temperature(row.reading.temperature), u32::from(row.reading.humidity));
    view! {
        <section class=format!("room-now {tone}") id="room-now" class:old=row.old>
            <h2 id="room-level"><Icon name=icon/>{title}</h2>
            {feels.map(|feels| view! { <p class="room-feels" id="room-feels">{feels}</p> })}
            <p>{read}" · "{i18n::minutes_ago(row.minutes_ago)}</p>
            {room.level.map(|level| view! { <p><strong>{i18n::heat_level_advice(level)}</strong></p> })}
        </section>
    }
    .into_any()
}

fn rest(room: &ClimateView, table: WorkRest, work: RwSignal<Work>) -> AnyView {
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
    let assumed: Vec<&str> = room.assumptions.iter().map(|one| i18n::assumption(*one)).collect();
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

fn leaves_out(room: &ClimateView) -> AnyView {
    view! {
        <details class="room-details">
            <summary>{i18n::room_leaves_out()}</summary>
            <ul class="heat-caveats">{room.caveats.iter().map(|caveat| view! { <li>{i18n::room_caveat(*caveat)}</li> }).collect::<Vec<_>>()}</ul>
        </details>
    }.into_any()
}

/// Earlier readings.
#[component]
pub fn EarlierReadings(room: Memo<ClimateView>) -> impl IntoView {
    move || {
        room.with(|room| {
            (!room.earlier.is_empty()).then(|| {
                let line = |row: &ClimateRow| {
                    let read =
                        i18n::room_of(i18n::temperature(row.reading.temperature), u32::from(row.reading.humidity));
                    let when = i18n::moment(row.reading.at);
                    let when = row.reading.by.as_ref().map_or_else(|| when.clone(), |who| i18n::who_when(who, when.clone()));
                    let feels = row.index.map(|index| i18n::room_feels(i18n::temperature(index.temperature())));
                    view! { <li><span><strong>{read}</strong><small class="muted">{feels}</small></span><small class="muted">{when}</small></li> }
                };
                view! {
                    <details class="room-details">
                        <summary>{i18n::room_earlier()}</summary>
                        <ul class="heat-list">{room.earlier.iter().map(line).collect::<Vec<_>>()}</ul>
                    </details>
                }
            })
        })
    }
}
