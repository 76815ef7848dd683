//! What to change at dryer and flash before ink goes on the screen. It stands before everything else.

use super::HeatPlace;
use super::settle::Settle;
use crate::parts::Icon;
use crate::place::Place;
use crate::press::expected_words;
use crate::store::Store;
use crate::words;
use lastpull_core::heat::{Changeover, HeatCall, LimitFinding, StandsBy};
use lastpull_core::job::RunId;
use lastpull_core::run::{CheckRow, CheckState};
use leptos::prelude::*;

/// The change before a run. Nothing where nothing changes.
#[component]
pub fn ChangeFirst(id: RunId, change: Memo<Option<Changeover>>) -> impl IntoView {
    let store = Store::from_context();
    move || {
        change.with(|found| {
            let Some(found) = found else { return ().into_any() };
            match found.call() {
                HeatCall::Nothing => ().into_any(),
                HeatCall::SeenTo if found.settling.is_none() => view! {
                    <p class="heat-ready" id="heat-ready"><Icon name="check"/>{words::change_seen_to()}</p>
                }
                .into_any(),
                call => panel(store, id, call, found, change),
            }
        })
    }
}

fn panel(store: Store, id: RunId, call: HeatCall, found: &Changeover, change: Memo<Option<Changeover>>) -> AnyView {
    let fabric = found.to_fabric.map_or_else(|| words::fabric_this().to_owned(), words::fabric_inside);
    let (tone, icon, title) = match call {
        HeatCall::SetUpTooHot => ("bad", "alert", words::change_set_up_too_hot(fabric)),
        HeatCall::TooHot => ("bad", "alert", words::change_too_hot(fabric)),
        HeatCall::Settle => ("calm", "heat", words::change_settle().to_owned()),
        HeatCall::SeenTo | HeatCall::Nothing => ("calm", "check", words::change_seen_to().to_owned()),
        HeatCall::ChangeFirst => ("tight", "heat", words::change_first().to_owned()),
    };
    let set_up = call == HeatCall::SetUpTooHot;
    let limits = found.limits_called();
    let stands = if set_up {
        found.setting.map(|asked| words::asks_for(words::temperature(asked)))
    } else {
        found.stands.filter(|_| call != HeatCall::Settle).map(|stands| stands_words(store, found, stands))
    };
    view! {
        <section class=format!("heat-change {tone}") id="changeover" aria-labelledby="changeover-title">
            <h2 id="changeover-title"><Icon name=icon/>{title}</h2>
            {stands.map(|stands| view! { <p id="heat-stands">{stands}</p> })}
            {(!limits.is_empty()).then(|| view! {
                <ul class="heat-limits">{limits.iter().map(limit).collect::<Vec<_>>()}</ul>
            })}
            {set_up.then(|| view! { <a class="button" href=Place::EditRun(id).hash()>{words::change_edit()}</a> })}
            {found.setting_missing.then(|| view! {
                <p>{words::change_no_setting()}" "<a class="heat-fix" href=Place::EditRun(id).hash()>{words::change_enter_setting()}</a></p>
            })}
            {(!found.steps.is_empty()).then(|| view! {
                <ol class="heat-steps">{found.steps.iter().map(step).collect::<Vec<_>>()}</ol>
            })}
            <Settle id change/>
        </section>
    }.into_any()
}

/// Where the dryer stands, and how that is known.
fn stands_words(
    store: Store,
    found: &Changeover,
    (temperature, by): (lastpull_core::quantity::Temperature, StandsBy),
) -> String {
    let at = words::temperature(temperature);
    let job = found
        .previous
        .and_then(|run| store.shop.with_untracked(|shop| shop.job_of(run).map(|(_, job)| job.title.clone())));
    match by {
        StandsBy::RunBefore => words::stands_run_before(at, job.unwrap_or_default()),
        StandsBy::Settled => words::stands_settled(at),
        StandsBy::OnItsWay => words::stands_on_its_way(at),
    }
}

/// A limit that is passed: where it lies, what happens there, whose figure that is.
fn limit(finding: &LimitFinding) -> AnyView {
    view! {
        <li>
            <strong>{words::temperature(finding.limit)}</strong>
            <span>{words::at_limit(finding.name)}<small>{words::limit_origin(finding.origin)}</small></span>
        </li>
    }
    .into_any()
}

fn step(row: &CheckRow) -> AnyView {
    let done = matches!(row.state, CheckState::Ticked | CheckState::Measured { within: true, .. });
    let was = row.before.as_ref().map(|before| words::was(expected_words(row.item, before)));
    view! {
        <li class:done=done>
            {done.then(|| view! { <Icon name="check"/> })}
            <span>{words::check_item(row.item)}" "<strong>{expected_words(row.item, &row.expected)}</strong></span>
            <small>{if done { Some(words::change_step_done().to_owned()) } else { was }}</small>
        </li>
    }
    .into_any()
}

/// Where the pages of heat begin, from a run.
pub fn to_heat() -> AnyView {
    view! { <a class="button quiet" id="to-heat" href=HeatPlace::Home.hash()>{words::to_heat()}</a> }.into_any()
}
