//! What to change at dryer and flash before ink goes on the screen. Shown above everything else.

use super::doubt_dialog::DoubtSheet;
use super::end_settling::Doubted;
use super::settle::Settle;
use crate::components::Icon;
use crate::i18n;
use crate::i18n::check_values::expected_text;
use crate::route::{HeatRoute, JobsRoute};
use crate::store::Store;
use lastpull_core::heat::{Changeover, HeatStatus, LimitCheck, MeasuredBreach, TemperatureSource};
use lastpull_core::ids::RunId;
use lastpull_core::run::{CheckRow, CheckState};
use leptos::prelude::*;

/// The changes before a run. Renders nothing if nothing changes.
#[component]
pub fn ChangeFirst(id: RunId, change: Memo<Option<Changeover>>) -> impl IntoView {
    let store = Store::from_context();
    // Kept here, since the panel is drawn again every minute.
    let doubted = RwSignal::new(None::<Doubted>);
    let shown = move || {
        change.with(|found| {
            let Some(found) = found else { return ().into_any() };
            match found.status() {
                HeatStatus::Nothing => ().into_any(),
                HeatStatus::Verified if found.settling.is_none() => view! {
                    <p class="heat-ready" id="heat-ready"><Icon name="check"/>{i18n::change_verified()}</p>
                }
                .into_any(),
                call @ (HeatStatus::SetUpTooHot
                | HeatStatus::TooHot
                | HeatStatus::TooCool
                | HeatStatus::TooShort
                | HeatStatus::ChangeFirst
                | HeatStatus::Settle
                | HeatStatus::Verified) => panel(store, id, call, found, change, doubted),
            }
        })
    };
    view! {
        {shown}
        {move || doubted.get().map(|one| view! { <DoubtSheet id one doubted/> })}
    }
}

fn panel(
    store: Store,
    id: RunId,
    call: HeatStatus,
    found: &Changeover,
    change: Memo<Option<Changeover>>,
    doubted: RwSignal<Option<Doubted>>,
) -> AnyView {
    let fabric = found.to_fabric.map_or_else(|| i18n::fabric_this().to_owned(), i18n::fabric_inside);
    let (tone, icon, title) = match call {
        HeatStatus::SetUpTooHot => ("bad", "alert", i18n::change_set_up_too_hot(fabric)),
        HeatStatus::TooHot if is_history(found) => ("bad", "alert", i18n::change_last_too_hot(fabric)),
        HeatStatus::TooHot => ("bad", "alert", i18n::change_too_hot(fabric)),
        HeatStatus::TooCool => ("bad", "alert", i18n::change_too_cool().to_owned()),
        HeatStatus::TooShort => ("bad", "alert", i18n::change_too_short().to_owned()),
        HeatStatus::Settle => ("calm", "heat", i18n::change_settle().to_owned()),
        HeatStatus::Verified | HeatStatus::Nothing => ("calm", "check", i18n::change_verified().to_owned()),
        HeatStatus::ChangeFirst => ("tight", "heat", i18n::change_first().to_owned()),
    };
    let set_up = call == HeatStatus::SetUpTooHot;
    let limits = found.exceeded_limits();
    let stands = if set_up {
        found.setting.map(|asked| i18n::asks_for(i18n::temperature(asked)))
    } else {
        found.current.filter(|_| call != HeatStatus::Settle).map(|stands| dryer_state_text(store, found, stands))
    };
    view! {
        <section class=format!("heat-change {tone}") id="changeover" aria-labelledby="changeover-title">
            <h2 id="changeover-title"><Icon name=icon/>{title}</h2>
            {stands.map(|stands| view! { <p id="heat-stands">{stands}</p> })}
            {cure_missed(found).filter(|_| matches!(call, HeatStatus::TooCool | HeatStatus::TooShort)).map(|missed| view! { <p id="heat-cure">{missed}</p> })}
            {(!limits.is_empty()).then(|| view! {
                <p>{i18n::change_limits()}</p>
                <ul class="heat-limits">{limits.iter().map(limit).collect::<Vec<_>>()}</ul>
            })}
            {(found.breach.is_some() && !set_up).then(|| view! { <p id="heat-again">{i18n::change_measure_again()}</p> })}
            {set_up.then(|| view! { <a class="button" href=JobsRoute::EditRun(id).hash()>{i18n::change_edit()}</a> })}
            {found.setting_missing.then(|| view! {
                <p>{i18n::change_no_setting()}" "<a class="heat-fix" href=JobsRoute::EditRun(id).hash()>{i18n::change_enter_setting()}</a></p>
            })}
            {(!found.steps.is_empty()).then(|| view! {
                <ol class="heat-steps">{found.steps.iter().map(step).collect::<Vec<_>>()}</ol>
            })}
            <Settle id change doubted/>
        </section>
    }.into_any()
}

/// The dryer's current temperature, and how it is known.
fn dryer_state_text(
    store: Store,
    found: &Changeover,
    (temperature, by): (lastpull_core::units::Temperature, TemperatureSource),
) -> String {
    let at = i18n::temperature(temperature);
    let job = found
        .previous
        .and_then(|run| store.shop.with_untracked(|shop| shop.job_of(run).map(|(_, job)| job.title.clone())));
    if let Some(last) = found.last_used.filter(|_| is_history(found)) {
        let when = i18n::moment(last);
        return match job.filter(|_| by == TemperatureSource::PreviousRun) {
            Some(job) => i18n::stands_cold_job(at, job, when),
            None => i18n::stands_cold(at, when),
        };
    }
    match by {
        TemperatureSource::PreviousRun => i18n::stands_run_before(at, job.unwrap_or_default()),
        TemperatureSource::Settled => i18n::stands_settled(at),
        TemperatureSource::CoolingDown => i18n::stands_cooling(at),
        TemperatureSource::HeatingUp => i18n::stands_heating(at),
        TemperatureSource::Measured => i18n::stands_measured(at),
        TemperatureSource::ReadByInfrared => i18n::stands_infrared(at),
    }
}

/// Whether the dryer's temperature is that of its last use, hours or days ago.
fn is_history(found: &Changeover) -> bool {
    let is_of_now = |by| matches!(by, TemperatureSource::Measured | TemperatureSource::ReadByInfrared);
    found.cold && found.current.is_some_and(|(_, by)| !is_of_now(by))
}

/// What the ink's cure asks for, if what was measured falls short of it.
pub fn cure_missed(found: &Changeover) -> Option<String> {
    match found.breach? {
        MeasuredBreach::BelowCure { cure, .. } => Some(i18n::cures_from(i18n::temperature(cure))),
        MeasuredBreach::ShortOfHold { hold, has } => Some(i18n::time_missed(i18n::seconds(has), i18n::seconds(hold))),
        MeasuredBreach::Limit(_) => None,
    }
}

/// An exceeded limit: its temperature, its effect, and its origin.
fn limit(finding: &LimitCheck) -> AnyView {
    view! {
        <li>
            <strong>{i18n::temperature(finding.limit)}</strong>
            <span>{i18n::at_limit(finding.name)}<small>{i18n::limit_origin(finding.origin)}</small></span>
        </li>
    }
    .into_any()
}

fn step(row: &CheckRow) -> AnyView {
    let done = matches!(row.state, CheckState::Ticked | CheckState::Measured { within: true, .. });
    let was = row.before.as_ref().map(|before| i18n::was(expected_text(row.item, before)));
    view! {
        <li class:done=done>
            {done.then(|| view! { <Icon name="check"/> })}
            <span>{i18n::check_item(row.item)}" "<strong>{expected_text(row.item, &row.expected)}</strong></span>
            <small>{if done { Some(i18n::change_step_done().to_owned()) } else { was }}</small>
        </li>
    }
    .into_any()
}

/// Link to the heat pages.
pub fn to_heat() -> AnyView {
    view! { <a class="button quiet" id="to-heat" href=HeatRoute::Home.hash()>{i18n::to_heat()}</a> }.into_any()
}
