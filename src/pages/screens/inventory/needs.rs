//! The screens that the coming runs still need, and when to start burning them.

use super::record::record_screens;
use crate::components::{Icon, Swatch};
use crate::i18n;
use crate::pages::shared::{ExposureLinks, StepCautions};
use crate::route::{JobsRoute, Route, ScreensRoute};
use crate::store::Store;
use lastpull_core::ids::RunId;
use lastpull_core::screen::{AlsoNeeded, BurnStep, NeedScreen, NeedStep, RunNeeds, screen_needs, tick_facts};
use lastpull_core::time::Millis;
use leptos::prelude::*;

/// The runs, in the order of the day.
#[component]
pub fn Needs() -> impl IntoView {
    let store = Store::from_context();
    let needs = store.every_minute(screen_needs);
    move || {
        let needs = needs.get();
        if needs.is_empty() {
            return view! { <p class="verdict good" id="needs-none"><Icon name="check"/>{i18n::needs_none()}</p> }
                .into_any();
        }
        let can = |step: &&NeedStep| !step.now.is_empty();
        let steps =
            needs.iter().flat_map(|need| need.steps.iter().filter(can)).map(|step| step.step).collect::<Vec<_>>();
        view! {
            <section class="screen-needs" id="needs">
                <h2>{i18n::needs_title()}</h2>
                {needs.into_iter().map(|need| view! { <Need need/> }).collect_view()}
                <StepCautions steps/>
            </section>
        }
        .into_any()
    }
}

#[component]
fn Need(need: RunNeeds) -> impl IntoView {
    let run = need.run;
    let unlisted = need.screens.iter().any(|screen| screen.screen.is_none());
    let [ready, wanted] = [need.ready, need.wanted].map(i18n::moment);
    let timing = if need.late_by > Millis::ZERO {
        view! {
            <p class="screen-when late"><Icon name="alert"/>{i18n::needs_late(i18n::duration(need.late_by), ready, wanted)}</p>
        }
    } else {
        view! { <p class="screen-when"><Icon name="clock"/>{i18n::needs_in_time(ready, wanted)}</p> }
    };
    let also = (!need.also.is_empty()).then(|| {
        let link = |AlsoNeeded { run, title, location, ink }| {
            let text = format!("{title} · {} · {ink}", i18n::location(location));
            view! { <li><a href=Route::Run(run).hash()>{text}</a></li> }
        };
        view! {
            <div class="screen-also">
                <span class="muted">{i18n::needs_also()}</span>
                <ul class="plain">{need.also.into_iter().map(link).collect_view()}</ul>
            </div>
        }
    });
    let (late, has_steps) = (need.late_by > Millis::ZERO, !need.steps.is_empty());
    view! {
        <article class="screen-need" class:late=late data-run=run.to_string()>
            <h3>
                <Swatch colour=need.ink_colour/>
                <a href=Route::Run(run).hash()>
                    <strong>{need.title}</strong>
                    <span class="muted">{i18n::location(need.location)}" · "{need.ink}</span>
                </a>
            </h3>
            {also}
            {has_steps.then_some(timing)}
            <p class="badges">
                {need.screens.into_iter().map(|screen| view! { <NeededScreen screen/> }).collect_view()}
            </p>
            {has_steps.then(|| view! {
                <ol class="screen-steps">
                    {need.steps.into_iter().map(|step| view! { <Step run step/> }).collect_view()}
                </ol>
            })}
            {unlisted.then(|| view! {
                <a class="button with-icon" href=Route::Screens(ScreensRoute::NewForRun(run)).hash()><Icon name="plus"/>{i18n::needs_add()}</a>
            })}
            {(!has_steps && !unlisted).then(|| view! {
                <p>{i18n::needs_no_labels()}</p>
                <a class="button with-icon" href=JobsRoute::EditRun(run).hash()><Icon name="edit"/>{i18n::needs_name_them()}</a>
            })}
        </article>
    }
}

/// A screen named by the run, its state, and whether it holds other art.
#[component]
fn NeededScreen(screen: NeedScreen) -> impl IntoView {
    let store = Store::from_context();
    let NeedScreen { label, screen, state, assigned_elsewhere } = screen;
    let (Some(id), Some(state)) = (screen, state) else {
        return view! { <span class="badge tight"><Icon name="info"/>{i18n::needs_unlisted(label)}</span> }.into_any();
    };
    let other = assigned_elsewhere
        .and_then(|run| store.shop.with_untracked(|shop| shop.job_of(run).map(|(_, job)| job.title.clone())));
    let other = other.map(|title| i18n::needs_other_art(&label, title));
    view! {
        <a class="badge screen-link" href=Route::Screens(ScreensRoute::Screen(id)).hash()>{label}" · "{i18n::screen_state(state)}</a>
        {other.map(|text| view! { <span class="badge tight"><Icon name="alert"/>{text}</span> })}
    }.into_any()
}

#[component]
fn Step(run: RunId, step: NeedStep) -> impl IntoView {
    let store = Store::from_context();
    let NeedStep { step, screens, time, latest, late, now } = step;
    let name = i18n::burn_step(step);
    let can = !now.is_empty();
    let exposed = (step == BurnStep::Expose).then(|| now.clone());
    let tick = move |_| {
        let (facts, labels) = store.shop.with_untracked(|shop| {
            let label = |id: &_| shop.screens.live(*id).map(|screen| screen.label.clone());
            let labels: Vec<String> = now.iter().filter_map(label).collect();
            (tick_facts(shop, &now, step, Some(run), store.operator().as_deref()), labels.join(", "))
        });
        record_screens(store, facts, i18n::burn_done_for(name, labels));
    };
    let when = i18n::moment(latest);
    view! {
        <li class="screen-step" class:next=can data-step=format!("{step:?}")>
            <span class="row-words">
                <strong>{name}</strong>
                <span class="muted">{i18n::screens_n(screens)}" · "{i18n::burn_takes(i18n::duration(time))}</span>
                {if late {
                    view! { <span class="screen-late"><Icon name="alert"/>{i18n::begin_late(when)}</span> }.into_any()
                } else {
                    view! { <span>{i18n::begin_by(when)}</span> }.into_any()
                }}
                {exposed.map(|screens| view! { <ExposureLinks screens/> })}
            </span>
            {can.then(|| view! {
                <button type="button" class="button with-icon" aria-label=format!("{name}: {}", i18n::burn_step_done()) on:click=tick>
                    <Icon name="check"/>{i18n::burn_step_done()}
                </button>
            })}
        </li>
    }
}
