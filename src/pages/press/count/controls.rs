//! Undo, misprint, number, failure, stop or end: one tap each, below the count zone. Five buttons fit beside each
//! other under a gloved thumb: stop and end share a place, since a stopped or complete run can only end. While
//! pieces are left, the dialog of a stop can end the run too.

use super::actions::{end_run, failed, undo};
use super::dialogs::Asking;
use crate::components::Icon;
use crate::i18n;
use crate::store::Store;
use lastpull_core::ids::RunId;
use lastpull_core::run::{CountView, RunPhase};
use leptos::prelude::*;

/// The row of buttons.
#[component]
pub fn Controls(id: RunId, count: Memo<CountView>, asking: RwSignal<Option<Asking>>) -> impl IntoView {
    let store = Store::from_context();
    let opening = RwSignal::new(false);
    let can_undo = Memo::new(move |_| count.with(|count| count.undo.is_some()));
    let left = Memo::new(move |_| count.with(|count| count.left));
    let ends =
        Memo::new(move |_| count.with(|count| count.left == 0 || matches!(count.phase, RunPhase::Stopped { .. })));
    let end = move |_| {
        if left.get_untracked() > 0 { asking.set(Some(Asking::End)) } else { end_run(store, id) }
    };
    view! {
        <div class="controls">
            <button type="button" class="control" id="undo" disabled=move || !can_undo.get() on:click=move |_| undo(store, id, count)>
                <Icon name="undo"/><span>{i18n::undo()}</span>
            </button>
            <button type="button" class="control" id="misprint" on:click=move |_| asking.set(Some(Asking::Misprint))>
                <Icon name="cross"/><span>{i18n::act_misprint()}</span>
            </button>
            <button type="button" class="control" id="number" on:click=move |_| asking.set(Some(Asking::Number))>
                <Icon name="plus"/><span>{i18n::act_number()}</span>
            </button>
            <button type="button" class="control" id="failed" on:click=move |_| failed(store, id, opening)>
                <Icon name="alert"/><span>{i18n::act_failed()}</span>
            </button>
            {move || if ends.get() {
                view! {
                    <button type="button" class="control" class:primary=move || left.get() == 0 id="end" on:click=end>
                        <Icon name="check"/><span>{i18n::act_end()}</span>
                    </button>
                }
            } else {
                view! {
                    <button type="button" class="control" id="stop" on:click=move |_| asking.set(Some(Asking::Stop))>
                        <Icon name="stop"/><span>{i18n::act_stop()}</span>
                    </button>
                }
            }}
        </div>
    }
}
