//! Banners above every page: the demo shop is open, the clock is behind, or a new version of the app is ready.

use crate::i18n;
use crate::store::Store;
use lastpull_core::time::Millis;
use leptos::prelude::*;

/// A clock that is further behind than this is told of once for each latest time of the shop: a fact of 2040 would
/// otherwise be told of at each opening until then.
const TOLD_ONCE: Millis = Millis::from_minutes(24 * 60);

/// The banners, if any.
#[component]
pub fn Banner() -> impl IntoView {
    let store = Store::from_context();
    let demo = Memo::new(move |_| store.settings.with(|settings| settings.demo));
    let behind = store.every_minute(|shop, clock| shop.clock_behind(clock.now).zip(shop.latest_time()));
    let read = RwSignal::new(false);
    let is_new = move |behind: Millis, latest| {
        let understood = store.settings.with(|settings| settings.clock_understood);
        !read.get() && (behind < TOLD_ONCE || understood != Some(latest))
    };
    let update = Memo::new(move |_| store.update_waits.get().then(|| store.is_printing()));
    view! {
        {move || demo.get().then(|| view! {
            <div class="banner" id="demo-banner">
                <span>{i18n::demo_banner()}</span>
                <button type="button" class="banner-button" on:click=move |_| crate::pages::welcome::demo::leave(store)>{i18n::demo_leave()}</button>
            </div>
        })}
        {move || behind.get().filter(|(behind, latest)| is_new(*behind, *latest)).map(|(behind, latest)| view! {
            <div class="banner" id="clock-banner" role="status">
                <span>{i18n::clock_behind(i18n::duration(behind))}" "<span class="banner-more">{i18n::clock_behind_more()}</span></span>
                <button type="button" class="banner-button" on:click=move |_| {
                    read.set(true);
                    store.update_settings(|settings| settings.clock_understood = Some(latest));
                }>{i18n::understood()}</button>
            </div>
        })}
        {move || update.get().map(|printing| if printing {
            view! { <div class="banner" id="update-banner"><span>{i18n::update_after_run()}</span></div> }.into_any()
        } else {
            view! {
                <div class="banner" id="update-banner">
                    <span>{i18n::update_waits()}</span>
                    <button type="button" class="banner-button" on:click=move |_| store.open_update()>{i18n::update_now()}</button>
                </div>
            }.into_any()
        })}
    }
}
