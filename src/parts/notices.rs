//! What was just done, with undo; and a save that fails, which cannot be missed.

use super::Icon;
use crate::store::{SaveState, Store};
use crate::{place::Place, words};
use lastpull_core::journal::StorageFault;
use leptos::prelude::*;

/// The notices over every screen.
#[component]
pub fn Notices() -> impl IntoView {
    let store = Store::from_context();
    view! {
        <div class="notices" role="status" aria-live="polite">
            {move || store.notice.get().map(|notice| {
                let can_undo = !notice.undo.is_empty();
                view! {
                    <div class="notice">
                        <span>{notice.text}</span>
                        {can_undo.then(|| view! {
                            <button type="button" class="notice-undo" on:click=move |_| store.undo_notice()>
                                <Icon name="undo"/>{words::undo()}
                            </button>
                        })}
                    </div>
                }
            })}
        </div>
    }
}

/// A save that fails: in the flow above the screen, which makes room for it.
#[component]
pub fn Faults() -> impl IntoView {
    let store = Store::from_context();
    view! {
        {move || match store.saving.get() {
            SaveState::Fine => ().into_any(),
            SaveState::Retrying(fault) => view! {
                <div class="fault retrying" role="alert">
                    <Icon name="alert"/>
                    <p>{words::storage_fault(&fault)}" "{words::retrying()}</p>
                </div>
            }.into_any(),
            SaveState::Blocked(fault) => view! { <Blocked fault/> }.into_any(),
        }}
    }
}

#[component]
fn Blocked(fault: StorageFault) -> impl IntoView {
    let store = Store::from_context();
    let next = if fault == StorageFault::Full { words::blocked_next_full() } else { words::blocked_next() };
    view! {
        <div class="fault blocked" role="alert" id="blocked">
            <Icon name="alert"/>
            <div>
                <h2>{words::blocked_title()}</h2>
                <p>{words::storage_fault(&fault)}</p>
                <p><strong>{move || words::blocked_waiting(store.waiting.with(Vec::len) as u32)}</strong></p>
                <p>{next}</p>
                <div class="button-row">
                    <button type="button" class="button primary" on:click=move |_| store.try_again()>{words::try_again()}</button>
                    <a class="button" href=Place::Exchange.hash()>{words::take_data_out()}</a>
                </div>
            </div>
        </div>
    }
}
