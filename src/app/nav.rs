//! The navigation bar.

use crate::components::Icon;
use crate::i18n;
use crate::route::{InkRoute, Route, ScreensRoute};
use leptos::prelude::*;

/// The links to the main pages.
#[component]
pub fn Nav(route: RwSignal<Route>) -> impl IntoView {
    let link = move |to: Route, icon: &'static str, words: &'static str, here: fn(Route) -> bool| {
        view! {
            <a href=to.hash() class="place" aria-current=move || here(route.get()).then_some("page")>
                <Icon name=icon/><span>{words}</span>
            </a>
        }
    };
    view! {
        <nav class="places" aria-label=i18n::places()>
            {link(Route::Day, "day", i18n::place_day(), |route| matches!(route, Route::Day | Route::Jobs | Route::NewJob | Route::Job(_) | Route::EditJob(_) | Route::RepeatJob(_) | Route::NewLot(_) | Route::EditLot(_) | Route::NewRun(_) | Route::EditRun(_)))}
            {link(Route::Press, "press", i18n::place_press(), |route| matches!(route, Route::Press | Route::Run(_) | Route::Failure(_)))}
            {link(Route::Ink(InkRoute::Home), "ink", i18n::place_ink(), |route| matches!(route, Route::Ink(_) | Route::Pot(_) | Route::Colour(_)))}
            {link(Route::Screens(ScreensRoute::Home), "screens", i18n::place_screens(), |route| matches!(route, Route::Screens(_) | Route::Exposure(_)))}
            {link(Route::Menu, "more", i18n::place_more(), |route| matches!(route, Route::Menu | Route::Settings | Route::Backup | Route::Storage | Route::Heat(_)))}
        </nav>
    }
}
