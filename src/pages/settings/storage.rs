//! Where the data is stored, whether it is kept permanently, and the app's version.

use crate::components::{Icon, Page, Sheet};
use crate::i18n;
use crate::platform::{install, updates};
use crate::route::{MoreRoute, Route};
use crate::store::Store;
use lastpull_core::shop::Shop;
use leptos::prelude::*;

/// The page.
#[component]
pub fn StoragePage() -> impl IntoView {
    let store = Store::from_context();
    store.refresh_persistence();
    updates::check_stored();
    view! {
        <Page title=Signal::derive(|| i18n::storage_title().to_owned()) up=Route::More(MoreRoute::Menu) class="about">
            <Data/>
            <section class="card">
                <h2>{i18n::storage_offline()}</h2>
                <p id="offline-ready" data-ready=move || store.offline_ready.get().to_string()>
                    {move || if store.offline_ready.get() { i18n::offline_ready() } else { i18n::offline_not_ready() }}
                </p>
            </section>
            <section class="card">
                <h2>{i18n::storage_install()}</h2>
                <InstallHint/>
            </section>
            <section class="card" id="who-decides">
                <h2>{i18n::who_decides_title()}</h2>
                <p>{i18n::who_decides()}</p>
            </section>
            <section class="card">
                <h2>{i18n::storage_version()}</h2>
                <p>{i18n::app_name()}" "{env!("CARGO_PKG_VERSION")}</p>
                <p class="quiet-line">{i18n::storage_licence()}</p>
            </section>
            <Erase/>
        </Page>
    }
}

#[component]
fn Data() -> impl IntoView {
    let store = Store::from_context();
    let facts = Memo::new(move |_| store.shop.with(Shop::fact_count));
    let unknown = Memo::new(move |_| store.shop.with(|shop| shop.unknown.values().sum::<u32>()));
    let persistence = move || store.persistence.get();
    view! {
        <section class="card">
            <h2>{i18n::storage_data()}</h2>
            <p>{i18n::storage_data_text()}</p>
            <p id="facts" data-facts=move || facts.get().to_string()>{move || i18n::storage_facts(i18n::facts(facts.get() as u32))}
                {move || persistence().space.map(|room| format!(" · {}", i18n::storage_room(i18n::bytes(room.used), i18n::bytes(room.quota))))}
            </p>
            {move || (unknown.get() > 0).then(|| view! { <p class="caution">{i18n::storage_unknown(i18n::facts(unknown.get()))}</p> })}
            {move || match (persistence().persisted, persistence().declined) {
                (Some(true), _) => view! { <p class="verdict good"><Icon name="check"/><span>{i18n::persistence_promised()}</span></p> }.into_any(),
                (_, true) => view! { <p class="caution">{i18n::persistence_declined()}</p> }.into_any(),
                (Some(false), _) => view! {
                    <p>{i18n::persistence_not_promised()}</p>
                    <button type="button" class="button" on:click=move |_| store.request_persistence()>{i18n::persistence_ask()}</button>
                }.into_any(),
                (None, _) => view! { <p class="quiet-line">{i18n::persistence_unknown()}</p> }.into_any(),
            }}
        </section>
    }
}

/// How to put the app on this device's home screen.
#[component]
pub fn InstallHint() -> impl IntoView {
    let store = Store::from_context();
    move || {
        store.install_offer.track();
        match install::method() {
            install::Method::Done => view! { <p>{i18n::install_done()}</p> }.into_any(),
            install::Method::Button => view! {
                <button type="button" class="button" on:click=move |_| store.ask_to_install()>{i18n::install_button()}</button>
            }.into_any(),
            install::Method::ShareMenu => view! { <p>{i18n::install_share()}</p> }.into_any(),
            install::Method::BrowserMenu => view! { <p>{i18n::install_menu()}</p> }.into_any(),
        }
    }
}

#[component]
fn Erase() -> impl IntoView {
    let store = Store::from_context();
    let asking = RwSignal::new(false);
    let demo = store.settings.with_untracked(|settings| settings.demo);
    (!demo).then(|| {
        view! {
            <section class="card">
                <h2>{i18n::storage_erase()}</h2>
                <p>{i18n::storage_erase_text()}</p>
                <button type="button" class="button danger" id="erase" on:click=move |_| asking.set(true)>{i18n::storage_erase_button()}</button>
                {move || asking.get().then(|| view! {
                    <Sheet title=i18n::storage_erase_sure() on_close=Callback::new(move |()| asking.set(false))>
                        <p>{i18n::storage_erase_sure_text(i18n::facts(store.shop.with_untracked(Shop::fact_count) as u32))}</p>
                        <div class="button-row">
                            <button type="button" class="button danger" id="erase-yes" on:click=move |_| { asking.set(false); store.erase_all(); }>{i18n::storage_erase_yes()}</button>
                            <button type="button" class="button primary" on:click=move |_| asking.set(false)>{i18n::cancel()}</button>
                        </div>
                    </Sheet>
                })}
            </section>
        }
    })
    .into_any()
}
