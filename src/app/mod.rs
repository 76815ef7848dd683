//! The app around the pages: what is set up once, the shell, and which page a route shows.

mod banner;
mod chunk;
mod dispatch;
mod nav;
mod notices;
mod save_error_banner;
mod shell;

use crate::i18n::{self, Locale};
use crate::platform::settings::Language;
use crate::platform::{clock, dom, history, spawn_local};
use crate::route::Route;
use crate::store::Store;
use leptos::prelude::*;
use shell::Shell;

/// The whole app.
#[component]
pub fn App() -> impl IntoView {
    dispatch::register_chunks();
    let store = Store::new();
    provide_context(store);
    store.start();
    let route = RwSignal::new(Route::from_hash(&history::hash()));
    history::watch(move || {
        // If the page that goes away had the focus, the browser would work out the styles of both pages to move it.
        dom::blur();
        route.set(Route::from_hash(&history::hash()));
        spawn_local(async {
            // The effect that draws the new page runs first.
            leptos::task::tick().await;
            // Screen readers announce the new page, and the keyboard focus starts at its top.
            dom::focus("heading");
            dom::scroll_page_to(history::scroll_place());
        });
    });
    let locale = Memo::new(move |_| store.settings.with(Locale::of));
    let theme = Memo::new(move |_| store.settings.with(|settings| settings.theme));
    Effect::new(move || {
        dom::set_root("data-theme", theme.get().name());
    });
    Effect::new(move || {
        dom::set_root(
            "lang",
            match locale.get().language {
                Language::English => "en",
                Language::Spanish => "es",
            },
        );
    });
    i18n::set_clock(clock::now);
    // Another language or other units: the page is reloaded, so that every text changes. Unsaved facts are
    // saved first.
    locale.get_untracked().activate();
    Effect::new(move |before: Option<Locale>| {
        let now = locale.get();
        if before.is_some_and(|before| before != now) {
            store.reopen_page();
        }
        now
    });
    view! { <Shell route/> }
}
