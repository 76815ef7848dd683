//! The menu: links to all other pages.

use crate::components::{MenuRow, Page};
use crate::i18n;
use crate::route::{HeatRoute, Route};
use crate::store::Store;
use leptos::prelude::*;

/// The menu.
#[component]
pub fn MenuPage() -> impl IntoView {
    let store = Store::from_context();
    let demo = Memo::new(move |_| store.settings.with(|settings| settings.demo));
    let line = |route: Route, icon: &'static str, title: &'static str, text: &'static str| {
        view! {
            <MenuRow href=route.hash() icon title text/>
        }
    };
    view! {
        <Page title=Signal::derive(|| i18n::place_more().to_owned()) class="more">
            <ul class="menu">
                {line(Route::Heat(HeatRoute::Home), "heat", i18n::heat_title(), i18n::heat_text())}
                {line(Route::Settings, "gear", i18n::settings_title(), i18n::settings_text())}
                {line(Route::Backup, "out", i18n::backup_title(), i18n::backup_text())}
                {line(Route::Deleted, "bin", i18n::deleted_title(), i18n::deleted_text())}
                {line(Route::Storage, "box", i18n::about_title(), i18n::about_text())}
            </ul>
            <section class="card">
                <h2>{i18n::demo_card_title()}</h2>
                <p>{i18n::welcome_demo_hint()}</p>
                {move || if demo.get() {
                    view! { <button type="button" class="button" on:click=move |_| crate::pages::welcome::demo::leave(store)>{i18n::demo_leave()}</button> }.into_any()
                } else {
                    view! { <button type="button" class="button" on:click=move |_| crate::pages::welcome::demo::enter(store)>{i18n::demo_open()}</button> }.into_any()
                }}
            </section>
        </Page>
    }
}
