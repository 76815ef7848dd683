//! Undo, misprint, number, failure, stop or end: one tap each, below the count zone. Five buttons fit beside each
//! other under a gloved thumb: stop and end share a place, since a stopped or complete run can only end. While
//! pieces are left, the dialog of a stop can end the run too.

use super::dialogs::Asking;
use crate::components::Icon;
use crate::i18n;
use crate::platform::{ids, spawn_local};
use crate::route::Route;
use crate::store::Store;
use lastpull_core::facts::Fact;
use lastpull_core::failure::{notice_at_press, open_facts, resume_facts, undo_verdict_of_misprint};
use lastpull_core::ids::RunId;
use lastpull_core::ids::Subject;
use lastpull_core::run::{CountView, RunPhase, UndoView};
use lastpull_core::screen::{facts_on_end, should_keep_ready};
use leptos::prelude::*;

/// The row of buttons.
#[component]
pub fn Controls(id: RunId, count: Memo<CountView>, asking: RwSignal<Option<Asking>>) -> impl IntoView {
    let store = Store::from_context();
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
            <button type="button" class="control" id="failed" on:click=move |_| failed(store, id)>
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

/// Ends the run and takes its screens off the press.
pub fn end_run(store: Store, id: RunId) {
    let by = store.operator();
    let mut facts = vec![(id, Fact::RunEnded)];
    facts.extend(store.shop.with_untracked(|shop| facts_on_end(shop, id, should_keep_ready(shop, id), by.as_deref())));
    store.record_all(facts);
}

/// Records a failure: the press stops at once, and the details are entered afterwards. If it is stopped for a
/// failure already, that failure is opened.
fn failed(store: Store, run: RunId) {
    if let Some(notice) = standing_failure(store, run) {
        return Route::Failure(notice).navigate();
    }
    let (id, by) = (ids::new_id(), store.operator());
    let facts = store.shop.with_untracked(|shop| open_facts(shop, run, id, by.as_deref()));
    spawn_local(async move {
        if store.record_and_wait(facts).await {
            Route::Failure(id).navigate();
        }
    });
}

/// Restarts the press; after a failure, with the facts that belong to it.
pub fn go_on(store: Store, run: RunId) {
    let by = store.operator();
    let after_failure = standing_failure(store, run)
        .map(|id| store.shop.with_untracked(|shop| resume_facts(shop, id, by.as_deref())))
        .filter(|facts| !facts.is_empty());
    store.record_all(after_failure.unwrap_or_else(|| vec![(run, Fact::Resumed)]));
}

/// The failure for which the press is stopped.
fn standing_failure(store: Store, run: RunId) -> Option<Subject> {
    let notice = store.shop.with_untracked(|shop| notice_at_press(shop, run))?;
    notice.stopped_for.is_none().then_some(notice.id)
}

/// Undoes the last action of this device on the run, saved or not.
pub fn undo(store: Store, id: RunId, count: Memo<CountView>) {
    let fact = match count.with_untracked(|count| count.undo) {
        Some(UndoView::Pulled { pieces, size }) => Fact::Pulled { pieces: -pieces, size },
        Some(UndoView::Misprinted { pieces, size, cause, was_counted }) => {
            Fact::Misprinted { pieces: -pieces, size, cause, was_counted }
        }
        None => return,
    };
    let judgement = store.shop.with_untracked(|shop| undo_verdict_of_misprint(shop, id, &fact));
    store.record_all([(id, fact)].into_iter().chain(judgement).collect());
    super::zone::give_feedback(store, 40, None);
}
