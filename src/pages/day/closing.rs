//! Today's closing time, moved by half an hour per tap.

use crate::components::Icon;
use crate::i18n;
use crate::store::Store;
use lastpull_core::facts::Fact;
use lastpull_core::ids::SHOP;
use lastpull_core::plan::moved_closing;
use lastpull_core::time::TimeOfDay;
use leptos::prelude::*;

/// The closing line of the schedule.
#[component]
pub fn Closing() -> impl IntoView {
    let store = Store::from_context();
    let today = Memo::new(move |_| store.clock.get().work_day());
    let closing = Memo::new(move |_| store.shop.with(|shop| shop.closings.on(today.get())));
    let set = move |time: TimeOfDay| {
        store.record(SHOP, Fact::DayClosing { day: today.get_untracked(), time });
        store.notify(i18n::closing_set(i18n::time_of(time)));
    };
    let shift = move |minutes: i32| {
        if let Some(closing) = closing.get_untracked() {
            set(moved_closing(closing, minutes));
        }
    };
    move || {
        match closing.get() {
        Some(at) => view! {
            <div class="closing">
                <button type="button" class="icon-button" aria-label=i18n::closing_earlier() on:click=move |_| shift(-30)>
                    <Icon name="minus"/>
                </button>
                <strong id="closing">{i18n::closing_at(i18n::time_of(at))}</strong>
                <button type="button" class="icon-button" aria-label=i18n::closing_later() on:click=move |_| shift(30)>
                    <Icon name="plus"/>
                </button>
            </div>
        }
        .into_any(),
        None => {
            let usual = store.shop.with_untracked(|shop| shop.closings.usual(today.get_untracked()));
            view! {
                <div class="closing">
                    <strong id="closing">{i18n::closed_today()}</strong>
                    <button type="button" class="button" on:click=move |_| set(usual)>{i18n::open_today(i18n::time_of(usual))}</button>
                </div>
            }
            .into_any()
        }
    }
    }
}
