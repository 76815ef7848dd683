//! The shop's screens: what to burn, the state of each, and its page.

mod board;
mod data;
mod form;
mod history;
mod home;
mod move_button;
mod needs;
mod record;
mod row;
mod screen;
mod select_bar;
mod settings;
mod steps;

use crate::route::ScreensRoute;
use leptos::prelude::*;

/// Draws the page of a route.
pub fn page(route: ScreensRoute) -> AnyView {
    match route {
        ScreensRoute::Home => view! { <home::ScreensHomePage/> }.into_any(),
        ScreensRoute::New => view! { <form::NewScreensPage run=None/> }.into_any(),
        ScreensRoute::NewForRun(run) => view! { <form::NewScreensPage run/> }.into_any(),
        ScreensRoute::Screen(id) => view! { <screen::ScreenPage id/> }.into_any(),
        ScreensRoute::Edit(id) => view! { <form::EditScreenPage id/> }.into_any(),
        ScreensRoute::Settings => view! { <settings::ScreenRoomSettingsPage/> }.into_any(),
    }
}
