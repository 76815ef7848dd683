//! Undo, misprint, number, stop, end: one touch each, under the zone.

use super::sheets::Asking;
use crate::kept::{Memo, RwSignal};
use crate::live::Drawn;
use crate::parts::Icon;
use crate::platform::feel;
use crate::store::Store;
use crate::words;
use lastpull_core::job::RunId;
use lastpull_core::journal::Fact;
use lastpull_core::run::{CountView, Standing, UndoView};
use lastpull_core::screen::{facts_on_end, keeps_ready};
use lastpull_view::view;
use leptos::prelude::*;

/// The row of controls.
#[component(transparent)]
pub fn Controls(id: RunId, count: Memo<CountView>, asking: RwSignal<Option<Asking>>) -> Drawn {
    let store = Store::from_context();
    let can_undo = Memo::new(move |_| count.with(|count| count.undo.is_some()));
    let stopped = Memo::new(move |_| count.with(|count| matches!(count.standing, Standing::Stopped { .. })));
    let left = Memo::new(move |_| count.with(|count| count.left));
    let end = move |_| {
        if left.get_untracked() > 0 { asking.set(Some(Asking::End)) } else { end_run(store, id) }
    };
    view! {
        <div class="controls">
            <button type="button" class="control" id="undo" disabled=move || !can_undo.get() on:click=move |_| undo(store, id, count)>
                <Icon name="undo"/><span>{words::undo()}</span>
            </button>
            <button type="button" class="control" id="misprint" on:click=move |_| asking.set(Some(Asking::Misprint))>
                <Icon name="cross"/><span>{words::act_misprint()}</span>
            </button>
            <button type="button" class="control" id="number" on:click=move |_| asking.set(Some(Asking::Number))>
                <Icon name="plus"/><span>{words::act_number()}</span>
            </button>
            <button type="button" class="control" id="stop" disabled=stopped on:click=move |_| asking.set(Some(Asking::Stop))>
                <Icon name="stop"/><span>{words::act_stop()}</span>
            </button>
            <button type="button" class="control" class:primary=move || left.get() == 0 id="end" on:click=end>
                <Icon name="check"/><span>{words::act_end()}</span>
            </button>
        </div>
    }
}

/// The run leaves the press, and its screens with it.
pub fn end_run(store: Store, id: RunId) {
    let by = store.settings.with_untracked(|settings| settings.crew.clone());
    let mut facts = vec![(id, Fact::RunEnded)];
    facts.extend(store.shop.with_untracked(|shop| facts_on_end(shop, id, keeps_ready(shop, id), by.as_deref())));
    store.record_all(facts);
}

/// Takes back the last thing this device did to the run, saved or not.
pub fn undo(store: Store, id: RunId, count: Memo<CountView>) {
    let fact = match count.with_untracked(|count| count.undo) {
        Some(UndoView::Pulled { pieces, size }) => Fact::Pulled { pieces: -pieces, size },
        Some(UndoView::Misprinted { pieces, size, cause, was_counted }) => {
            Fact::Misprinted { pieces: -pieces, size, cause, was_counted }
        }
        None => return,
    };
    if store.settings.with_untracked(|settings| settings.buzz) {
        feel::buzz(40);
    }
    store.record(id, fact);
}
