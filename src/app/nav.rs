//! The navigation bar.

use crate::components::Icon;
use crate::i18n;
use crate::route::{InkRoute, MoreRoute, Route, ScreensRoute};
use leptos::prelude::*;

/// A place in the navigation bar.
#[derive(Clone, Copy, PartialEq, Eq)]
enum NavTab {
    Day,
    Press,
    Ink,
    Screens,
    More,
}

/// The place that a page belongs to.
fn tab_of(route: Route) -> NavTab {
    match route {
        Route::Day | Route::Jobs(_) => NavTab::Day,
        Route::Press | Route::Run(_) | Route::Failure(_) => NavTab::Press,
        Route::Ink(_) | Route::Pot(_) | Route::Colour(_) => NavTab::Ink,
        Route::Screens(_) | Route::Exposure(_) => NavTab::Screens,
        Route::More(_) | Route::Heat(_) => NavTab::More,
    }
}

/// The links to the main pages.
#[component]
pub fn Nav(route: RwSignal<Route>) -> impl IntoView {
    let link = move |to: Route, icon: &'static str, words: &'static str| {
        let here = move || tab_of(route.get()) == tab_of(to);
        view! {
            <a href=to.hash() class="place" aria-current=move || here().then_some("page")>
                <Icon name=icon/><span>{words}</span>
            </a>
        }
    };
    view! {
        <nav class="places" aria-label=i18n::places()>
            {link(Route::Day, "day", i18n::nav_day())}
            {link(Route::Press, "press", i18n::nav_press())}
            {link(Route::Ink(InkRoute::Home), "ink", i18n::nav_ink())}
            {link(Route::Screens(ScreensRoute::Home), "screens", i18n::nav_screens())}
            {link(Route::More(MoreRoute::Menu), "more", i18n::nav_more())}
        </nav>
    }
}
