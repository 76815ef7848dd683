//! Asks before a settling time is recorded that is unlike the dryer, most often because of a mistaken touch.

use super::end_settling::{Doubted, end_settling};
use crate::components::Sheet;
use crate::i18n;
use crate::store::Store;
use lastpull_core::heat::SettledTime;
use lastpull_core::ids::RunId;
use leptos::prelude::*;

/// The question. The first answer goes on timing.
#[component]
pub fn DoubtSheet(id: RunId, one: Doubted, doubted: RwSignal<Option<Doubted>>) -> impl IntoView {
    let store = Store::from_context();
    let (settling, doubt) = one;
    let title = if doubt.too_soon { i18n::settle_soon_title() } else { i18n::settle_late_title() };
    let close = Callback::new(move |()| doubted.set(None));
    let end = move |time: SettledTime| {
        doubted.set(None);
        end_settling(store, id, settling, time);
    };
    let text = i18n::settle_doubt(i18n::stopwatch(doubt.took.into()), i18n::duration(doubt.expected.into()));
    view! {
        <Sheet title on_close=close>
            <p id="settle-doubt">{text}</p>
            <p class="quiet-line">{i18n::settle_doubt_hint()}</p>
            <div class="button-row">
                <button type="button" class="button primary" id="settle-keep" on:click=move |_| close.run(())>{i18n::settle_keep()}</button>
                <button type="button" class="button" id="settle-leave-out" on:click=move |_| end(SettledTime::LeftOut)>
                    {i18n::settle_leave_out(i18n::temperature(settling.to))}
                </button>
                {doubt.can_count.then(|| view! {
                    <button type="button" class="button" id="settle-count" on:click=move |_| end(SettledTime::Counts)>{i18n::settle_count()}</button>
                })}
            </div>
        </Sheet>
    }
}
