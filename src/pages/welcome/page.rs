//! The first start: a new shop, a backup file from another device, or the demo.

use crate::components::Icon;
use crate::i18n;
use crate::platform::scope;
use crate::route::{MoreRoute, Route};
use crate::store::Store;
use lastpull_core::facts::Fact;
use lastpull_core::ids::SHOP;
use leptos::prelude::*;

/// The first page of a device without data.
#[component]
pub fn Welcome() -> impl IntoView {
    let store = Store::from_context();
    let name = RwSignal::new(String::new());
    let start = move |event: leptos::ev::SubmitEvent| {
        event.prevent_default();
        let name = name.get_untracked().trim().chars().take(80).collect::<String>();
        if !name.is_empty() {
            store.record(SHOP, Fact::ShopNamed(name));
        }
        store.update_settings(|settings| settings.started = true);
        Route::Day.navigate();
    };
    view! {
        <article class="welcome">
            <div class="welcome-mark"><Icon name="press"/></div>
            <h1 id="heading" tabindex="-1">{i18n::welcome_title()}</h1>
            <p class="lead">{i18n::welcome_text()}</p>
            <form class="card" on:submit=start>
                <div class="field">
                    <label for="shop-name">{i18n::welcome_shop_name()}</label>
                    <div class="field-input">
                        <input id="shop-name" type="text" autocomplete="off" prop:value=name on:input=move |event| name.set(event_target_value(&event))/>
                    </div>
                </div>
                <button type="submit" class="button primary huge" id="start-shop">{i18n::welcome_start()}</button>
            </form>
            <button type="button" class="button huge" id="open-demo" on:click=move |_| super::demo::enter(store)>{i18n::welcome_demo()}</button>
            <p class="quiet-line">{i18n::welcome_demo_hint()}</p>
            {scope::other_copy().map(|path| view! { <p class="quiet-line" id="other-copy">{i18n::welcome_other_copy(path)}</p> })}
            <a
                class="button quiet"
                href=MoreRoute::Backup.hash()
                id="have-file"
                on:click=move |_| store.update_settings(|settings| settings.started = true)
            >
                {i18n::welcome_file()}
            </a>
        </article>
    }
}
