//! The menu: links to all other pages.

use crate::components::{MenuRow, Page};
use crate::i18n;
use crate::route::Route;
use crate::store::Store;
use leptos::prelude::*;

/// A row of the menu.
pub struct MenuEntry {
    /// The page it leads to.
    pub route: Route,
    /// Icon name.
    pub icon: &'static str,
    /// Title.
    pub title: &'static str,
    /// What the page is for.
    pub text: &'static str,
}

/// The menu.
#[component]
pub fn MenuPage(
    /// Its rows, from the top.
    entries: Vec<MenuEntry>,
) -> impl IntoView {
    let store = Store::from_context();
    let demo = Memo::new(move |_| store.settings.with(|settings| settings.demo));
    let rows = entries.into_iter().map(|MenuEntry { route, icon, title, text }| {
        view! { <MenuRow href=route.hash() icon title text/> }
    });
    let rows = rows.collect_view();
    view! {
        <Page title=Signal::derive(|| i18n::nav_more().to_owned()) class="more">
            <ul class="menu">
                {rows}
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
