//! Among the shop's screens: what to burn, where each stands, and its card.

mod board;
mod card;
mod data;
mod form;
mod history;
mod home;
mod move_button;
mod needs;
mod place;
mod room;
mod row;
mod select;
mod steps;

pub use place::ScreensPlace;

use crate::store::Store;
use card::ScreenCardScreen;
use form::{EditScreen, NewScreens};
use home::ScreensHome;
use lastpull_core::journal::{Fact, Subject};
use lastpull_core::screen::undo_of;
use leptos::prelude::*;
use room::ScreenRoom;

/// Draws one of these screens.
pub fn screen(place: ScreensPlace) -> AnyView {
    match place {
        ScreensPlace::Home => view! { <ScreensHome/> }.into_any(),
        ScreensPlace::New => view! { <NewScreens run=None/> }.into_any(),
        ScreensPlace::NewFor(run) => view! { <NewScreens run/> }.into_any(),
        ScreensPlace::Card(id) => view! { <ScreenCardScreen id/> }.into_any(),
        ScreensPlace::Edit(id) => view! { <EditScreen id/> }.into_any(),
        ScreensPlace::Room => view! { <ScreenRoom/> }.into_any(),
    }
}

/// Records facts about screens and tells of them, with the way back.
fn record_with_undo(store: Store, facts: Vec<(Subject, Fact)>, text: String) {
    let undo = store.shop.with_untracked(|shop| undo_of(shop, &facts));
    store.record_all(facts);
    store.tell_with_undo(text, undo);
}
