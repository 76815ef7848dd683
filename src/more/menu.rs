//! The list of everything else.

use crate::parts::{MenuRow, Page};
use crate::place::{HeatPlace, Place};
use crate::store::Store;
use crate::words;
use leptos::prelude::*;

/// The list.
#[component]
pub fn MoreScreen() -> impl IntoView {
    let store = Store::from_context();
    let demo = Memo::new(move |_| store.settings.with(|settings| settings.demo));
    let line = |place: Place, icon: &'static str, title: &'static str, text: &'static str| {
        view! {
            <MenuRow href=place.hash() icon title text/>
        }
    };
    view! {
        <Page title=Signal::derive(|| words::place_more().to_owned()) class="more">
            <ul class="menu">
                {line(Place::Heat(HeatPlace::Home), "heat", words::heat_title(), words::heat_text())}
                {line(Place::Settings, "gear", words::settings_title(), words::settings_text())}
                {line(Place::Exchange, "out", words::backup_title(), words::backup_text())}
                {line(Place::About, "box", words::about_title(), words::about_text())}
            </ul>
            <section class="card">
                <h2>{words::demo_card_title()}</h2>
                <p>{words::welcome_demo_hint()}</p>
                {move || if demo.get() {
                    view! { <button type="button" class="button" on:click=move |_| crate::demo::leave(store)>{words::demo_leave()}</button> }.into_any()
                } else {
                    view! { <button type="button" class="button" on:click=move |_| crate::demo::enter(store)>{words::demo_open()}</button> }.into_any()
                }}
            </section>
        </Page>
    }
}
