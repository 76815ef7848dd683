//! The navigation bar.

use crate::components::Icon;
use crate::i18n;
use crate::route::{InkRoute, MoreRoute, Route, ScreensRoute};
use leptos::prelude::*;

/// A place in the navigation bar.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Place {
    Day,
    Press,
    Ink,
    Screens,
    More,
}

/// The place that a page belongs to.
fn place_of(route: Route) -> Place {
    match route {
        Route::Day | Route::Jobs(_) => Place::Day,
        Route::Press | Route::Run(_) | Route::Failure(_) => Place::Press,
        Route::Ink(_) | Route::Pot(_) | Route::Colour(_) => Place::Ink,
        Route::Screens(_) | Route::Exposure(_) => Place::Screens,
        Route::More(_) | Route::Heat(_) => Place::More,
    }
}

/// The links to the main pages.
#[component]
pub fn Nav(route: RwSignal<Route>) -> impl IntoView {
    let link = move |to: Route, icon: &'static str, words: &'static str| {
        let here = move || place_of(route.get()) == place_of(to);
        view! {
            <a href=to.hash() class="place" aria-current=move || here().then_some("page")>
                <Icon name=icon/><span>{words}</span>
            </a>
        }
    };
    view! {
        <nav class="places" aria-label=i18n::places()>
            {link(Route::Day, "day", i18n::place_day())}
            {link(Route::Press, "press", i18n::place_press())}
            {link(Route::Ink(InkRoute::Home), "ink", i18n::place_ink())}
            {link(Route::Screens(ScreensRoute::Home), "screens", i18n::place_screens())}
            {link(Route::More(MoreRoute::Menu), "more", i18n::place_more())}
        </nav>
    }
}
