//! The banner shown while saving fails.

use crate::components::Icon;
use crate::i18n;
use crate::route::MoreRoute;
use crate::store::{SaveState, Store};
use lastpull_core::journal::StorageFault;
use leptos::prelude::*;

/// Error banner while saving fails. It is in the page flow, so it covers nothing.
#[component]
pub fn SaveErrorBanner() -> impl IntoView {
    let store = Store::from_context();
    view! {
        {move || match store.saving.get() {
            SaveState::Fine => ().into_any(),
            SaveState::Retrying(fault) => view! {
                <div class="fault retrying" role="alert">
                    <Icon name="alert"/>
                    <p>{i18n::storage_fault(&fault)}" "{i18n::retrying()}</p>
                </div>
            }.into_any(),
            SaveState::Blocked(fault) => view! { <Blocked fault/> }.into_any(),
        }}
    }
}

#[component]
fn Blocked(fault: StorageFault) -> impl IntoView {
    let store = Store::from_context();
    let next = if fault == StorageFault::Full { i18n::blocked_next_full() } else { i18n::blocked_next() };
    view! {
        <div class="fault blocked" role="alert" id="blocked">
            <Icon name="alert"/>
            <div>
                <h2>{i18n::blocked_title()}</h2>
                <p>{i18n::storage_fault(&fault)}</p>
                <p><strong>{move || i18n::blocked_waiting(store.pending.with(Vec::len) as u32)}</strong></p>
                <p>{next}</p>
                <div class="button-row">
                    <button type="button" class="button primary" on:click=move |_| store.retry_save()>{i18n::try_again()}</button>
                    <a class="button" href=MoreRoute::Backup.hash()>{i18n::take_data_out()}</a>
                </div>
            </div>
        </div>
    }
}
