//! The first start: a new shop, a backup file from another device, or the demo.

use crate::components::Icon;
use crate::i18n;
use crate::platform::scope;
use crate::route::{MoreRoute, Route};
use crate::store::{Loading, Store};
use lastpull_core::facts::Fact;
use lastpull_core::ids::SHOP;
use leptos::prelude::*;

/// The first page of a device without data, and of one whose data the browser has removed.
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
        store.start_shop();
        Route::Day.navigate();
    };
    let is_lost = store.loading.get_untracked() == Loading::DataGone;
    let backed_up = store.settings.with_untracked(|settings| settings.backed_up);
    let have_file = move |class| {
        view! {
            <a
                class=class
                href=MoreRoute::Backup.hash()
                id="have-file"
                on:click=move |_| store.update_settings(|settings| settings.started = true)
            >
                {i18n::welcome_file()}
            </a>
        }
    };
    let (title, text) = if is_lost {
        (i18n::data_lost_title(), i18n::data_lost_text())
    } else {
        (i18n::welcome_title(), i18n::welcome_text())
    };
    view! {
        <article class="welcome">
            <div class="welcome-mark"><Icon name=if is_lost { "alert" } else { "press" }/></div>
            <h1 id="heading" tabindex="-1">{title}</h1>
            <p class="lead">{text}</p>
            {is_lost.then(|| view! {
                <p id="last-backup">{backed_up.map(|at| i18n::backup_last(i18n::moment(at)))}</p>
                {have_file("button primary huge")}
            })}
            <form class="card" on:submit=start>
                <div class="field">
                    <label for="shop-name">{i18n::welcome_shop_name()}</label>
                    <div class="field-input">
                        <input id="shop-name" type="text" autocomplete="off" prop:value=name on:input=move |event| name.set(event_target_value(&event))/>
                    </div>
                </div>
                <button type="submit" class="button huge" class:primary=!is_lost id="start-shop">{i18n::welcome_start()}</button>
            </form>
            <button type="button" class="button huge" id="open-demo" on:click=move |_| super::demo::enter(store)>{i18n::welcome_demo()}</button>
            <p class="quiet-line">{i18n::welcome_demo_hint()}</p>
            {scope::other_copy().map(|path| view! { <p class="quiet-line" id="other-copy">{i18n::welcome_other_copy(path)}</p> })}
            {(!is_lost).then(|| have_file("button quiet"))}
        </article>
    }
}
