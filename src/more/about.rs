//! Where the data is, whether it is kept, and what the app is.

use crate::parts::{Icon, Page, Sheet};
use crate::place::Place;
use crate::platform::install;
use crate::store::Store;
use crate::words;
use lastpull_core::shop::Shop;
use leptos::prelude::*;

/// Storage and app.
#[component]
pub fn AboutScreen() -> impl IntoView {
    let store = Store::from_context();
    store.look_at_keeping();
    view! {
        <Page title=Signal::derive(|| words::about_title().to_owned()) up=Place::More class="about">
            <Data/>
            <section class="card">
                <h2>{words::about_offline()}</h2>
                <p id="offline-ready" data-ready=move || store.offline_ready.get().to_string()>
                    {move || if store.offline_ready.get() { words::offline_ready() } else { words::offline_not_ready() }}
                </p>
            </section>
            <section class="card">
                <h2>{words::about_install()}</h2>
                <InstallHint/>
            </section>
            <section class="card">
                <h2>{words::about_version()}</h2>
                <p>{words::app_name()}" "{env!("CARGO_PKG_VERSION")}</p>
                <p class="quiet-line">{words::about_licence()}</p>
            </section>
            <Erase/>
        </Page>
    }
}

#[component]
fn Data() -> impl IntoView {
    let store = Store::from_context();
    let facts = Memo::new(move |_| store.shop.with(Shop::facts));
    let unknown = Memo::new(move |_| store.shop.with(|shop| shop.unknown.values().sum::<u32>()));
    let kept = move || store.kept.get();
    view! {
        <section class="card">
            <h2>{words::about_data()}</h2>
            <p>{words::about_data_text()}</p>
            <p id="facts" data-facts=move || facts.get().to_string()>{move || words::about_facts(words::facts(facts.get() as u32))}
                {move || kept().room.map(|room| format!(" · {}", words::about_room(words::bytes(room.used), words::bytes(room.quota))))}
            </p>
            {move || (unknown.get() > 0).then(|| view! { <p class="caution">{words::about_unknown(words::facts(unknown.get()))}</p> })}
            {move || match (kept().promised, kept().declined) {
                (Some(true), _) => view! { <p class="verdict good"><Icon name="check"/><span>{words::keep_promised()}</span></p> }.into_any(),
                (_, true) => view! { <p class="caution">{words::keep_declined()}</p> }.into_any(),
                (Some(false), _) => view! {
                    <p>{words::keep_not_promised()}</p>
                    <button type="button" class="button" on:click=move |_| store.ask_keeping()>{words::keep_ask()}</button>
                }.into_any(),
                (None, _) => view! { <p class="quiet-line">{words::keep_unknown()}</p> }.into_any(),
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
        match install::way() {
            install::Way::Done => view! { <p>{words::install_done()}</p> }.into_any(),
            install::Way::Button => view! {
                <button type="button" class="button" on:click=move |_| { install::ask(); store.install_offer.update(|n| *n += 1); }>{words::install_button()}</button>
            }.into_any(),
            install::Way::ShareMenu => view! { <p>{words::install_share()}</p> }.into_any(),
            install::Way::BrowserMenu => view! { <p>{words::install_menu()}</p> }.into_any(),
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
                <h2>{words::about_erase()}</h2>
                <p>{words::about_erase_text()}</p>
                <button type="button" class="button danger" id="erase" on:click=move |_| asking.set(true)>{words::about_erase_button()}</button>
                {move || asking.get().then(|| view! {
                    <Sheet title=words::about_erase_sure() on_close=Callback::new(move |()| asking.set(false))>
                        <p>{words::about_erase_sure_text(words::facts(store.shop.with_untracked(Shop::facts) as u32))}</p>
                        <div class="button-row">
                            <button type="button" class="button danger" id="erase-yes" on:click=move |_| { asking.set(false); store.erase_all(); }>{words::about_erase_yes()}</button>
                            <button type="button" class="button primary" on:click=move |_| asking.set(false)>{words::cancel()}</button>
                        </div>
                    </Sheet>
                })}
            </section>
        }
    })
    .into_any()
}
