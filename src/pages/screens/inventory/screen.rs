//! One screen: its state, its next state, its art, its data.

use super::data::Data;
use super::history::{Failures, History};
use super::move_button::move_button;
use super::record::record_screens;
use super::steps::Steps;
use crate::components::{GarmentChip, Icon, NotHere, Page};
use crate::forms::delete;
use crate::i18n;
use crate::pages::photos::Photos;
use crate::pages::shared::{ExposureLinks, StepCautions};
use crate::route::{Route, ScreensRoute};
use crate::store::Store;
use lastpull_core::ids::Subject;
use lastpull_core::screen::{AssignedRun, BurnStep, ScreenCard, ScreenState, move_facts, screen_card, tick_facts};
use leptos::prelude::*;

/// The page.
#[component]
pub fn ScreenPage(id: Subject) -> impl IntoView {
    let store = Store::from_context();
    let card = store.every_minute(move |shop, clock| screen_card(shop, id, clock.now));
    let here = Memo::new(move |_| card.with(Option::is_some));
    move || {
        if !here.get() {
            return view! { <NotHere/> }.into_any();
        }
        let title = Signal::derive(move || {
            card.with(|card| card.as_ref().map(|card| card.screen.label.clone()).unwrap_or_default())
        });
        let aside = move || {
            let edit = Route::Screens(ScreensRoute::Edit(id)).hash();
            view! { <a class="icon-button" href=edit aria-label=i18n::edit()><Icon name="edit"/></a> }
        };
        view! {
            <Page title up=Route::Screens(ScreensRoute::Home) aside class="screen-card">
                {move || card.get().map(|card| {
                    let coming = matches!(card.screen.state, ScreenState::Coated | ScreenState::Exposed) || !card.row.assigned.is_empty();
                    view! {
                        <StateSection card=card.clone()/>
                        <Carries carries=card.row.assigned colour=card.screen.colour.clone()/>
                        {(coming && card.next_step.is_some()).then(|| view! { <Steps steps=card.steps/> })}
                        <Data screen=card.screen replaces=card.replaces replaced_by=card.replaced_by/>
                    }
                })}
                <section class="screen-photos">
                    <h2>{i18n::photos_title()}</h2>
                    <Photos subject=id/>
                </section>
                {move || card.get().map(|card| view! { <Failures rows=card.failures/> <History id screen=card.screen/> })}
                <Delete id/>
            </Page>
        }.into_any()
    }
}

/// The state, and the states it can move to, one tap each.
#[component]
fn StateSection(card: ScreenCard) -> impl IntoView {
    let store = Store::from_context();
    let ScreenCard { id, screen, row, next_step, next, .. } = card;
    let state = screen.state;
    let label = StoredValue::new(screen.label);
    let go = move |to: ScreenState| {
        let facts = store.shop.with_untracked(|shop| move_facts(shop, &[id], to, store.operator().as_deref()));
        record_screens(store, facts, i18n::screens_moved(label.get_value(), i18n::screen_state(to)));
    };
    let dry = move |step: BurnStep| {
        let facts = store.shop.with_untracked(|shop| tick_facts(shop, &[id], step, None, store.operator().as_deref()));
        record_screens(store, facts, i18n::burn_done_for(i18n::burn_step(step), label.get_value()));
    };
    // The time to expose stands here from the coat on.
    let exposes = (state == ScreenState::Coated && next_step != Some(BurnStep::Expose)).then_some(BurnStep::Expose);
    let steps: Vec<BurnStep> = next_step.into_iter().chain(exposes).collect();
    let to_tape = (next_step == Some(BurnStep::Tape)).then(i18n::state_to_tape_hint);
    let hint = to_tape.or_else(|| i18n::screen_state_hint(state));
    let drying = next_step.filter(|step| matches!(step, BurnStep::Dry | BurnStep::WashDry));
    let others: Vec<ScreenState> =
        ScreenState::ALL.into_iter().filter(|other| *other != state && !next.contains(other)).collect();
    let to = move |to: ScreenState, primary: bool| move_button(to, primary, move || go(to));
    view! {
        <section class="screen-stand">
            <p class="screen-state" id="state" data-state=format!("{state:?}")>{i18n::screen_state(state)}</p>
            <p class="muted">{i18n::screen_since(i18n::moment(row.since), i18n::age(row.age))}</p>
            {hint.map(|hint| view! { <p>{hint}</p> })}
            {row.warning.map(|warning| view! { <p class="caution"><Icon name="alert"/>{i18n::age_warning_long(warning)}</p> })}
            <div class="button-row screen-moves">
                {drying.map(|step| view! {
                    <button type="button" class="button primary with-icon" id="dry" on:click=move |_| dry(step)><Icon name="check"/>{i18n::screen_is_dry()}</button>
                })}
                {next.into_iter().enumerate().map(|(index, state)| to(state, index == 0 && drying.is_none())).collect_view()}
            </div>
            {(state == ScreenState::Coated).then(|| view! {
                <ExposureLinks screens=vec![id]/>
            })}
            <StepCautions steps/>
            <details class="screen-fold">
                <summary>{i18n::screen_other_state()}</summary>
                <div class="button-row">{others.into_iter().map(|state| to(state, false)).collect_view()}</div>
            </details>
        </section>
    }
}

/// The runs whose art is or will be on it.
#[component]
fn Carries(carries: Vec<AssignedRun>, colour: String) -> impl IntoView {
    if carries.is_empty() {
        return ().into_any();
    }
    view! {
        <section class="screen-carries">
            <h2>{i18n::screen_carries()}</h2>
            {(!colour.is_empty()).then(|| view! { <p class="lead">{colour.clone()}</p> })}
            <ul class="menu">
                {carries.into_iter().map(|carried| view! {
                    <li>
                        <a class="menu-row" href=Route::Run(carried.run).hash()>
                            <GarmentChip garment=carried.garment_colour ink=carried.ink_colour/>
                            <span class="row-words">
                                <strong>{carried.title}</strong>
                                <span class="muted">{i18n::location(carried.location)}" · "{carried.ink}" · "{carried.client}</span>
                            </span>
                            <Icon name="next"/>
                        </a>
                    </li>
                }).collect_view()}
            </ul>
        </section>
    }.into_any()
}

#[component]
fn Delete(id: Subject) -> impl IntoView {
    let store = Store::from_context();
    let delete = move |_| {
        let label = store.shop.with_untracked(|shop| shop.screens.live(id).map(|screen| screen.label.clone()));
        delete(store, id, i18n::screen_deleted(label.unwrap_or_default()), Route::Screens(ScreensRoute::Home));
    };
    view! {
        <div class="button-row">
            <button type="button" class="button with-icon danger" id="delete" on:click=delete><Icon name="bin"/>{i18n::delete()}</button>
        </div>
    }
}
