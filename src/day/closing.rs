//! Closing today, moved by half an hour in one tap.

use crate::parts::Icon;
use crate::store::Store;
use crate::words;
use lastpull_core::journal::Fact;
use leptos::prelude::*;
use uuid::Uuid;

/// The closing line of the rail.
#[component]
pub fn Closing() -> impl IntoView {
    let store = Store::from_context();
    let today = Memo::new(move |_| store.clock.get().today());
    let minutes = Memo::new(move |_| store.shop.with(|shop| shop.closings.on(today.get())));
    let set = move |minutes: u16| {
        store.record(Uuid::nil(), Fact::DayClosing { day: today.get_untracked(), minutes });
        store.tell(words::closing_set(words::time_of(minutes)));
    };
    let shift = move |by: i32| {
        if let Some(minutes) = minutes.get_untracked() {
            set((i32::from(minutes) + by).clamp(0, 24 * 60 - 1) as u16);
        }
    };
    move || {
        match minutes.get() {
        Some(at) => view! {
            <div class="closing">
                <button type="button" class="icon-button" aria-label=words::closing_earlier() on:click=move |_| shift(-30)>
                    <Icon name="minus"/>
                </button>
                <strong id="closing">{words::closing_at(words::time_of(at))}</strong>
                <button type="button" class="icon-button" aria-label=words::closing_later() on:click=move |_| shift(30)>
                    <Icon name="plus"/>
                </button>
            </div>
        }
        .into_any(),
        None => view! {
            <div class="closing">
                <strong id="closing">{words::closed_today()}</strong>
                <button type="button" class="button" on:click=move |_| set(17 * 60)>{words::open_today()}</button>
            </div>
        }
        .into_any(),
    }
    }
}
