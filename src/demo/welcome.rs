//! The first start: a clean shop, a file from another device, or the demo.

use crate::parts::Icon;
use crate::place::Place;
use crate::store::Store;
use crate::words;
use lastpull_core::journal::Fact;
use leptos::prelude::*;
use uuid::Uuid;

/// The first screen of a device that holds nothing yet.
#[component]
pub fn Welcome() -> impl IntoView {
    let store = Store::from_context();
    let name = RwSignal::new(String::new());
    let start = move |event: leptos::ev::SubmitEvent| {
        event.prevent_default();
        let name = name.get_untracked().trim().chars().take(80).collect::<String>();
        if !name.is_empty() {
            store.record(Uuid::nil(), Fact::ShopNamed(name));
        }
        store.set(|settings| settings.started = true);
        Place::Day.go();
    };
    view! {
        <article class="welcome">
            <div class="welcome-mark"><Icon name="press"/></div>
            <h1 id="heading" tabindex="-1">{words::welcome_title()}</h1>
            <p class="lead">{words::welcome_text()}</p>
            <form class="card" on:submit=start>
                <div class="field">
                    <label for="shop-name">{words::welcome_shop_name()}</label>
                    <div class="field-input">
                        <input id="shop-name" type="text" autocomplete="off" prop:value=name on:input=move |event| name.set(event_target_value(&event))/>
                    </div>
                </div>
                <button type="submit" class="button primary huge" id="start-shop">{words::welcome_start()}</button>
            </form>
            <button type="button" class="button huge" id="open-demo" on:click=move |_| super::enter(store)>{words::welcome_demo()}</button>
            <p class="quiet-line">{words::welcome_demo_hint()}</p>
            <a
                class="button quiet"
                href=Place::Exchange.hash()
                id="have-file"
                on:click=move |_| store.set(|settings| settings.started = true)
            >
                {words::welcome_file()}
            </a>
        </article>
    }
}
