//! Banners above every page: the demo shop is open, or a new version of the app is ready.

use crate::i18n;
use crate::platform::updates;
use crate::store::Store;
use leptos::prelude::*;

/// The banners, if any.
#[component]
pub fn Banner() -> impl IntoView {
    let store = Store::from_context();
    let demo = Memo::new(move |_| store.settings.with(|settings| settings.demo));
    let behind = store.every_minute(|shop, clock| shop.clock_behind(clock.now));
    let read = RwSignal::new(false);
    let update = Memo::new(move |_| store.update_waits.get().then(|| store.is_printing()));
    view! {
        {move || demo.get().then(|| view! {
            <div class="banner" id="demo-banner">
                <span>{i18n::demo_banner()}</span>
                <button type="button" class="banner-button" on:click=move |_| crate::pages::welcome::demo::leave(store)>{i18n::demo_leave()}</button>
            </div>
        })}
        {move || behind.get().filter(|_| !read.get()).map(|behind| view! {
            <div class="banner" id="clock-banner" role="status">
                <span>{i18n::clock_behind(i18n::duration(behind))}" "<span class="banner-more">{i18n::clock_behind_more()}</span></span>
                <button type="button" class="banner-button" on:click=move |_| read.set(true)>{i18n::understood()}</button>
            </div>
        })}
        {move || update.get().map(|printing| if printing {
            view! { <div class="banner" id="update-banner"><span>{i18n::update_after_run()}</span></div> }.into_any()
        } else {
            view! {
                <div class="banner" id="update-banner">
                    <span>{i18n::update_waits()}</span>
                    <button type="button" class="banner-button" on:click=move |_| updates::activate_update()>{i18n::update_now()}</button>
                </div>
            }.into_any()
        })}
    }
}
