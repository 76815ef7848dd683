//! The rest of a failure's page: notes, another failure, delete.

use super::record::record_change;
use crate::components::Icon;
use crate::forms::Debounced;
use crate::i18n;
use crate::pages::shared::open_failure;
use crate::route::Route;
use crate::store::Store;
use lastpull_core::failure::{FailureCard, delete_facts, undo_delete_facts};
use lastpull_core::ids::RunId;
use lastpull_core::ids::Subject;
use leptos::prelude::*;

/// Notes and other actions.
#[component]
pub fn Footer(id: Subject, run: Option<RunId>, card: Memo<Option<FailureCard>>) -> impl IntoView {
    let store = Store::from_context();
    let notes =
        Memo::new(move |_| card.with(|card| card.as_ref().map(|card| card.failure.notes.clone()).unwrap_or_default()));
    let found =
        Memo::new(move |_| card.with(|card| card.as_ref().map(|card| (card.failure.by.clone(), card.failure.at))));
    let on_press = Memo::new(move |_| card.with(|card| card.as_ref().is_some_and(|card| card.on_press)));
    let debounced =
        Debounced::new(Callback::new(move |text: String| record_change(store, id, |form| form.notes = text)));
    let delete = move |_| {
        let (facts, undo) = store.shop.with_untracked(|shop| (delete_facts(shop, id), undo_delete_facts(shop, id)));
        store.record_with_undo(facts, undo, i18n::failure_deleted());
        run.map_or(Route::Day, Route::Run).replace();
    };
    let opening = RwSignal::new(false);
    let another = move |_| {
        let Some(run) = run else { return };
        open_failure(store, run, opening);
    };
    view! {
        <section class="failure-more">
            <div class="field">
                <label for="failure-notes">{i18n::notes()}</label>
                <textarea
                    id="failure-notes"
                    rows="2"
                    maxlength="2000"
                    prop:value=notes.get_untracked()
                    on:input=move |event| debounced.set(event_target_value(&event))
                ></textarea>
            </div>
            <p class="quiet-line">{move || found.get().map(|(by, at)| match by {
                Some(who) => i18n::failure_found_by(who, i18n::moment(at)),
                None => i18n::failure_found_at(i18n::moment(at)),
            })}</p>
            <div class="button-row">
                {move || on_press.get().then(|| view! {
                    <button type="button" class="button with-icon" id="another" on:click=another><Icon name="plus"/>{i18n::failure_another()}</button>
                })}
                <button type="button" class="button with-icon danger" id="delete-failure" on:click=delete><Icon name="bin"/>{i18n::failure_delete()}</button>
            </div>
        </section>
    }
}
