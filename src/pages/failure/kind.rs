//! What failed, and on which screen.

use super::kind_picture::KindPicture;
use super::record::{record, record_change};
use super::step::{Next, Step};
use crate::i18n;
use crate::platform::ids;
use crate::store::Store;
use lastpull_core::failure::{FailureCard, FailureKind, add_screen_facts};
use lastpull_core::ids::Subject;
use leptos::prelude::*;

/// The kinds of failure as a grid, then the run's screens if there are several.
#[component]
pub fn Kind(id: Subject, card: Memo<Option<FailureCard>>, current: RwSignal<Option<Step>>) -> impl IntoView {
    let store = Store::from_context();
    let chosen = Memo::new(move |_| card.with(|card| card.as_ref().and_then(|card| card.failure.kind)));
    let screen = Memo::new(move |_| card.with(|card| card.as_ref().and_then(|card| card.failure.screen)));
    let screens =
        Memo::new(move |_| card.with(|card| card.as_ref().map(|card| card.screens.clone()).unwrap_or_default()));
    let leave = Callback::new(move |()| card.with_untracked(|card| Step::Kind.leave(card.as_ref(), current)));
    let pick_kind = move |kind: FailureKind| {
        record_change(store, id, |form| form.kind = Some(kind));
        // With one screen, nothing more needs to be asked.
        if screen.with_untracked(Option::is_some) || screens.with_untracked(Vec::is_empty) {
            leave.run(());
        }
    };
    let pick_screen = move |label: String, found: Option<Subject>| {
        match found {
            Some(_) => record_change(store, id, |form| form.screen = found),
            None => {
                let (new, by) = (ids::new_id(), store.operator());
                let facts = store.shop.with_untracked(|shop| add_screen_facts(shop, id, &label, new, by.as_deref()));
                record(store, facts);
            }
        }
        if chosen.with_untracked(Option::is_some) {
            leave.run(());
        }
    };
    view! {
        <div class="failure-kinds" role="group" aria-label=i18n::failure_step_kind()>
            {FailureKind::ALL.into_iter().map(|kind| view! {
                <button
                    type="button"
                    class="button failure-kind"
                    data-kind=format!("{kind:?}")
                    aria-pressed=move || (chosen.get() == Some(kind)).to_string()
                    on:click=move |_| pick_kind(kind)
                >
                    <KindPicture kind/><span>{i18n::failure_kind(Some(kind))}</span>
                </button>
            }).collect_view()}
        </div>
        {move || (!screens.with(Vec::is_empty)).then(|| view! {
            <h3>{i18n::failure_which_screen()}</h3>
            <div class="failure-screens" role="group" aria-label=i18n::failure_which_screen()>
                {screens.get().into_iter().map(|found| {
                    let words = if found.screen.is_some() { found.label.clone() } else { i18n::failure_not_listed(&found.label) };
                    let of = found.screen;
                    view! {
                        <button
                            type="button"
                            class="button failure-screen"
                            aria-pressed=move || (of.is_some() && screen.get() == of).to_string()
                            on:click=move |_| pick_screen(found.label.clone(), of)
                        >{words}</button>
                    }
                }).collect_view()}
            </div>
            {move || chosen.get().is_some().then(|| view! { <Next on_next=leave/> })}
        })}
    }
}
