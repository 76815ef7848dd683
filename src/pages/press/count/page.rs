//! The page of the count: the zone, the pace, the sizes, the controls.

use super::controls::Controls;
use super::dialogs::{Asking, Sheets};
use super::pace::Pace;
use super::sizes::Sizes;
use super::zone::Zone;
use crate::components::{Icon, Sheet};
use crate::pages::press::heading::Heading;
use crate::pages::shared::FailureBar;
use crate::platform::{dom, wake_lock};
use crate::route::Route;
use crate::store::Store;
use crate::{i18n, lazy};
use lastpull_core::failure::notice_at_press;
use lastpull_core::ids::RunId;
use lastpull_core::job::Size;
use lastpull_core::run::{CountView, check_list, run_pace};
use leptos::prelude::*;

/// The page of the count.
#[component]
pub fn Count(id: RunId, heading: Heading, count: Memo<CountView>) -> impl IntoView {
    let store = Store::from_context();
    let asking = RwSignal::new(None::<Asking>);
    // A size chosen by the user stays until it is full; then counting goes on with the next size.
    let picked = RwSignal::new(None::<Option<Size>>);
    let size = Memo::new(move |_| {
        count.with(|count| match picked.get() {
            Some(size) if count.sizes.iter().any(|row| row.size == size && row.left() > 0) || count.left == 0 => size,
            _ => count.next_size,
        })
    });
    wake_lock::stay_awake();
    on_cleanup(wake_lock::let_sleep);
    let title = heading.title.clone();
    Effect::new(move || dom::set_title(&format!("{title} · {}", i18n::app_name())));
    // The pace is updated when facts are saved: during the touch itself only the count is drawn.
    let pace = Memo::new(move |_| store.shop.with(|shop| run_pace(shop, id, store.clock.get())));
    let skipped = Memo::new(move |_| store.shop.with(|shop| check_list(shop, id).skipped() as u32));
    let failure = Memo::new(move |_| store.shop.with(|shop| notice_at_press(shop, id)));
    let checks_open = RwSignal::new(false);
    view! {
        // Before a button opens a dialog, which gives the focus back to it.
        <article class="page count" on:click:capture=move |event| dom::blur_after_touch(&event)>
            <header class="page-head">
                <a class="head-back" href=Route::Day.hash() on:click=move |event| Route::Day.go_up(&event) aria-label=i18n::back()><Icon name="back"/></a>
                <div class="count-title">
                    <h1 id="heading" tabindex="-1">{heading.title.clone()}</h1>
                    <p>{heading.print.clone()}</p>
                </div>
                <button type="button" class="button quiet checks-button" class:skipped=move || { skipped.get() > 0 } on:click=move |_| checks_open.set(true)>
                    {i18n::see_checks()}
                    {move || (skipped.get() > 0).then(|| view! { <span class="visually-hidden">{i18n::checks_skipped(skipped.get())}</span><Icon name="skip"/> })}
                </button>
            </header>
            {move || failure.get().map(|notice| view! { <FailureBar notice/> })}
            <Pace pace/>
            <Sizes count size picked/>
            <Zone id count size garment=heading.garment ink=heading.ink/>
            <Controls id count asking/>
            <Sheets id count size asking/>
            {move || checks_open.get().then(|| view! {
                <Sheet title=i18n::checks_title() on_close=Callback::new(move |()| checks_open.set(false))>
                    {lazy::draw(Route::Run(id))}
                </Sheet>
            })}
        </article>
    }
}
