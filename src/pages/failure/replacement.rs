//! Choosing the screen that replaces the failed one.

use super::record::record;
use crate::components::Sheet;
use crate::forms::{Bound, Draft, Field, Kind, focus_problem};
use crate::i18n;
use crate::platform::ids;
use crate::store::Store;
use lastpull_core::failure::{Replacement, SpareScreenRow, SpareScreens, burn_again_facts, spare_screens_for};
use lastpull_core::form::Problems;
use lastpull_core::ids::Subject;
use leptos::prelude::*;

/// The shop's coated and clean screens, and a frame that is not in the inventory.
#[component]
pub fn ReplacementPicker(id: Subject, choosing: RwSignal<bool>) -> impl IntoView {
    let store = Store::from_context();
    let SpareScreens { rows, new_pulls_at } =
        store.shop.with_untracked(|shop| spare_screens_for(shop, id, store.clock.get_untracked().now));
    let label = RwSignal::new(String::new());
    let draft = Draft::of_dialog("burn").keep(label);
    let problems = RwSignal::new(Problems::new());
    let burn = move |replacement: Replacement| {
        let by = store.operator();
        match store.shop.with_untracked(|shop| burn_again_facts(shop, id, &replacement, by.as_deref())) {
            Ok(facts) => {
                draft.saved();
                choosing.set(false);
                record(store, facts);
            }
            Err(found) => {
                problems.set(found);
                focus_problem();
            }
        }
    };
    let none = rows.is_empty();
    view! {
        <Sheet title=i18n::failure_burn_title() on_close=Callback::new(move |()| choosing.set(false))>
            {none.then(|| view! { <p>{i18n::failure_burn_none()}</p> })}
            <ul class="failure-stock">
                {rows.into_iter().map(|SpareScreenRow { id: screen, label, state, same_mesh, needed_for, pulls_at: pulls }| view! {
                    <li>
                        <button type="button" class="button failure-stock-row" data-stock=label.clone() on:click=move |_| burn(Replacement::Stock(screen))>
                            <strong>{label.clone()}</strong>
                            <span class="row-words">
                                <span>{i18n::failure_stock_state(state)}{if same_mesh { view! { " · "{i18n::failure_burn_same()} }.into_any() } else { ().into_any() }}</span>
                                {needed_for.map(|title| view! { <small class="failure-wanted">{i18n::failure_burn_wanted(title)}</small> })}
                                <small>{i18n::failure_burn_pulls(i18n::moment(pulls))}</small>
                            </span>
                        </button>
                    </li>
                }).collect_view()}
            </ul>
            <form novalidate=true on:submit=move |event| {
                event.prevent_default();
                burn(Replacement::New { id: ids::new_id(), label: label.get_untracked() });
            }>
                {draft.line()}
                <h3>{i18n::failure_burn_new()}<small>{i18n::failure_burn_pulls(i18n::moment(new_pulls_at))}</small></h3>
                <Field label=i18n::failure_burn_label() kind=Kind::Words bound=Bound::of("label", label) problems=Signal::from(problems)/>
                <button type="submit" class="button" class:primary=none>{i18n::failure_burn_it()}</button>
            </form>
        </Sheet>
    }
}
