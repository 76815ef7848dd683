//! The screens in the bath, and the screens waiting for it.

use super::dialog::Dialog;
use crate::components::Icon;
use crate::i18n;
use crate::route::ExposureRoute;
use crate::store::Store;
use lastpull_core::ids::Subject;
use lastpull_core::screen::{BathView, InBath};
use lastpull_core::shop::Shop;
use lastpull_core::time::Millis;
use leptos::prelude::*;

/// The labels of screens.
pub fn labels(shop: &Shop, screens: &[Subject]) -> Vec<String> {
    screens.iter().filter_map(|id| shop.screens.get(*id)).map(|screen| screen.label.clone()).collect()
}

/// The batch in the bath: its time, the time left, and the button to take it out.
#[component]
pub fn BatchInBath(bath: Memo<BathView>, asking: RwSignal<Option<Dialog>>) -> impl IntoView {
    let store = Store::from_context();
    let card = move |row: &InBath| {
        let id = row.id;
        let names = store.shop.with(|shop| labels(shop, &row.screens));
        let count = i18n::screens_n(u32::from(row.count));
        let what = if names.is_empty() { count } else { format!("{count}: {}", names.join(", ")) };
        let (left, over) = match row.left {
            Some(Millis::ZERO) => (i18n::bath_over().to_owned(), true),
            Some(left) => (i18n::about_left(i18n::duration(left)), false),
            None => (i18n::bath_usual_unknown().to_owned(), false),
        };
        view! {
            <li class="stencil-batch" data-batch=id.to_string()>
                <div class="row-words">
                    <strong class="stencil-elapsed">{i18n::duration(row.elapsed)}</strong>
                    <span>{what}</span>
                    <span class="muted" class:stencil-over=over>{over.then(|| view! { <Icon name="alert"/> })}{format!("{left} · {}", i18n::bath_in_since(i18n::moment(row.since)))}</span>
                </div>
                <button type="button" class="button primary stencil-press" on:click=move |_| asking.set(Some(Dialog::Out(id)))>{i18n::bath_take_out()}</button>
            </li>
        }
    };
    view! {
        <section class="stencil-part" id="in-bath">
            <h2>{i18n::bath_in_title()}</h2>
            {move || bath.with(|bath| if bath.in_bath.is_empty() {
                view! { <p class="quiet-line">{i18n::bath_in_none()}</p> }.into_any()
            } else {
                view! { <ul class="stencil-batches">{bath.in_bath.iter().map(card).collect_view()}</ul> }.into_any()
            })}
        </section>
    }
}

/// The waiting screens, the time they need, and the button to put them in.
#[component]
pub fn WaitingScreens(bath: Memo<BathView>, asking: RwSignal<Option<Dialog>>) -> impl IntoView {
    view! {
        <section class="stencil-part" id="waiting">
            <h2>{i18n::bath_wait_title()}</h2>
            {move || bath.with(|bath| {
                let queue = bath.queue;
                if queue.waiting == 0 {
                    return view! { <p class="quiet-line">{i18n::bath_wait_none()}</p> }.into_any();
                }
                let batches = queue.batches.map(|batches| format!(" · {}", i18n::bath_queue_batches(batches)));
                view! {
                    <p class="stencil-queue">
                        <strong>{i18n::bath_screens_wait(queue.waiting)}{batches}</strong>
                        {queue.time.map(|time| view! { <span>{i18n::bath_queue_time(i18n::duration(time))}</span> })}
                        {queue.from_earlier_charge.then(|| view! { <span class="muted">{i18n::bath_queue_earlier()}</span> })}
                        {queue.batches.is_none().then(|| view! { <a href=ExposureRoute::BathSettings.hash()>{i18n::bath_queue_no_capacity()}</a> })}
                    </p>
                }.into_any()
            })}
            <button
                type="button"
                class="button huge"
                class:primary=move || bath.with(|bath| bath.in_bath.is_empty())
                id="put-in"
                on:click=move |_| asking.set(Some(Dialog::In))
            >
                {i18n::bath_put_in()}
            </button>
            <button type="button" class="button quiet stencil-alone" id="note-out" on:click=move |_| asking.set(Some(Dialog::NoteOut))>{i18n::bath_note_out()}</button>
        </section>
    }
}
