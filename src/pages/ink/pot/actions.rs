//! What can be done with a pot: the next action visible, the others behind a button.

use super::approve::{ApprovalSheet, SaveSheet};
use super::consume::{RunUseSheet, WasteSheet};
use super::top_up::TopUpSheet;
use super::transfer::MoveSheet;
use crate::components::Icon;
use crate::forms::delete;
use crate::i18n;
use crate::pages::ink::record::record_match;
use crate::route::{ColourRoute, InkRoute, PotRoute, Route};
use crate::store::Store;
use lastpull_core::facts::Fact;
use lastpull_core::ids::Subject;
use lastpull_core::ink::{InkFact, PotCard, PotField, PotStage};
use leptos::prelude::*;

/// The open dialog of a pot.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Asking {
    /// The client's approval.
    Yes,
    /// Saving as a revision.
    Save,
    /// Ink used on a run.
    Used,
    /// Ink thrown away.
    Waste,
    /// Moving ink to another pot.
    MoveOut,
    /// Moving ink from another pot.
    MoveIn,
    /// Topping up to a weight.
    TopUp,
}

/// The actions.
#[component]
pub fn Steps(
    id: Subject,
    card: Memo<Option<PotCard>>,
    asking: RwSignal<Option<Asking>>,
    go_on: Callback<()>,
) -> impl IntoView {
    let store = Store::from_context();
    let at = Memo::new(move |_| {
        card.with(|card| {
            card.as_ref()
                .map(|card| (card.stage, card.unfinished, card.as_written, card.label.grams.is_positive(), card.recipe))
        })
    });
    let match_it = move |_| {
        record_match(store, id);
    };
    let close = move |closed: bool| {
        let fact = |closed| Fact::Ink(InkFact::PotSet(vec![PotField::Closed(closed)]));
        let said = if closed { i18n::pot_closed_notice() } else { i18n::pot_opened_notice() };
        store.record_with_undo(vec![(id, fact(closed))], vec![(id, fact(!closed))], said);
    };
    let delete = move |_| {
        let name = card.with_untracked(|card| card.as_ref().map(|card| card.label.pot.clone()).unwrap_or_default());
        delete(store, id, i18n::pot_deleted(name), Route::Ink(InkRoute::Home));
    };
    let ask = move |what: Asking| move |_| asking.set(Some(what));
    let add = move |primary: bool| {
        view! { <a class="button huge with-icon" class:primary=primary id="add" href=Route::Pot(PotRoute::Add(id)).hash()><Icon name="plus"/>{i18n::pot_add()}</a> }
    };
    let to_match = move || {
        view! { <a class="button huge with-icon" id="to-match" href=Route::Colour(ColourRoute::Match(id)).hash()><Icon name="drop"/>{i18n::pot_to_match()}</a> }
    };
    let matches = move || {
        view! { <button type="button" class="button huge with-icon" id="matches" on:click=match_it><Icon name="check"/>{i18n::pot_matches()}</button> }
    };
    let yes = move |primary: bool| {
        view! { <button type="button" class="button huge with-icon" class:primary=primary id="yes" on:click=ask(Asking::Yes)><Icon name="check"/>{i18n::pot_client_yes()}</button> }
    };
    let used = move |primary: bool| {
        view! { <button type="button" class="button huge with-icon" class:primary=primary id="used" on:click=ask(Asking::Used)><Icon name="press"/>{i18n::pot_used()}</button> }
    };
    let again = move |recipe: Subject| {
        view! { <a class="button huge with-icon" id="again" href=Route::Ink(InkRoute::MakeAgain(recipe)).hash()><Icon name="repeat"/>{i18n::ink_make_again()}</a> }
    };
    let first = move || {
        let Some((stage, unfinished, _, _, recipe)) = at.get() else { return ().into_any() };
        let go_on = unfinished.then(|| view! {
            <button type="button" class="button huge with-icon" class:primary=stage == PotStage::Weighing id="go-on" on:click=move |_| go_on.run(())><Icon name="go"/>{i18n::pot_weigh_go_on()}</button>
        });
        match stage {
            PotStage::Weighing => view! { {go_on}{add(false)} }.into_any(),
            PotStage::Mixed => view! { {add(true)}{to_match()}{matches()}{go_on} }.into_any(),
            PotStage::Matched => view! { {yes(true)}{used(false)}{add(false)} }.into_any(),
            PotStage::Approved => view! { {used(true)}{recipe.map(again)}{add(false)} }.into_any(),
            PotStage::Empty => {
                view! { {add(true)}{go_on}<button type="button" class="button huge with-icon" on:click=move |_| close(true)><Icon name="box"/>{i18n::pot_close()}</button> }.into_any()
            }
            PotStage::Closed => {
                view! { <button type="button" class="button huge with-icon primary" id="open" on:click=move |_| close(false)><Icon name="undo"/>{i18n::pot_open()}</button> }.into_any()
            }
        }
    };
    let rest = move || {
        let Some((stage, _, as_written, holds, _)) = at.get() else { return ().into_any() };
        let open = stage != PotStage::Closed;
        let some = |what: Asking, icon: &'static str, key: &'static str, words: &'static str| {
            view! { <button type="button" class="menu-row pot-menu" id=key on:click=ask(what)><Icon name=icon/><span class="row-words"><strong>{words}</strong></span></button> }
        };
        view! {
            {(open && holds).then(|| view! {
                {(!matches!(stage, PotStage::Matched | PotStage::Approved)).then(|| yes_row(ask(Asking::Yes)))}
                {(!as_written).then(|| some(Asking::Save, "repeat", "save", i18n::pot_save()))}
                {some(Asking::TopUp, "up", "top-up", i18n::pot_top_up())}
                {(!matches!(stage, PotStage::Matched | PotStage::Approved)).then(|| some(Asking::Used, "press", "used", i18n::pot_used()))}
                {some(Asking::MoveOut, "out", "move-out", i18n::pot_move_out())}
            })}
            {open.then(|| some(Asking::MoveIn, "in", "move-in", i18n::pot_move_in()))}
            {(open && holds).then(|| some(Asking::Waste, "bin", "waste", i18n::pot_waste()))}
            {(open && stage != PotStage::Empty).then(|| view! {
                <button type="button" class="menu-row pot-menu" id="close" on:click=move |_| close(true)><Icon name="box"/><span class="row-words"><strong>{i18n::pot_close()}</strong><small class="muted">{i18n::pot_close_hint()}</small></span></button>
            })}
            <button type="button" class="menu-row pot-menu danger" id="delete" on:click=delete><Icon name="cross"/><span class="row-words"><strong>{i18n::delete()}</strong><small class="muted">{i18n::pot_delete_hint()}</small></span></button>
        }.into_any()
    };
    view! {
        <div class="pot-next" id="next">{first}</div>
        <details class="pot-fold" id="more">
            <summary>{i18n::pot_more_steps()}</summary>
            <div class="menu">{rest}</div>
        </details>
    }
}

fn yes_row(ask: impl Fn(leptos::ev::MouseEvent) + 'static) -> AnyView {
    view! { <button type="button" class="menu-row pot-menu" id="yes" on:click=ask><Icon name="check"/><span class="row-words"><strong>{i18n::pot_client_yes()}</strong></span></button> }.into_any()
}

/// The open dialog.
#[component]
pub fn Sheets(id: Subject, card: Memo<Option<PotCard>>, asking: RwSignal<Option<Asking>>) -> impl IntoView {
    let close = Callback::new(move |()| asking.set(None));
    move || match asking.get() {
        None => ().into_any(),
        Some(Asking::Yes) => view! { <ApprovalSheet id card close/> }.into_any(),
        Some(Asking::Save) => view! { <SaveSheet id close/> }.into_any(),
        Some(Asking::Used) => view! { <RunUseSheet id close/> }.into_any(),
        Some(Asking::Waste) => view! { <WasteSheet id close/> }.into_any(),
        Some(Asking::MoveOut) => view! { <MoveSheet id into=false close/> }.into_any(),
        Some(Asking::MoveIn) => view! { <MoveSheet id into=true close/> }.into_any(),
        Some(Asking::TopUp) => view! { <TopUpSheet id close/> }.into_any(),
    }
}
