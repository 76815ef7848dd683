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

use leptos::prelude::*;
use crate::live::Drawn;
use crate::store::Store;
use card::ScreenCardScreen;
use form::{EditScreen, NewScreens};
use home::ScreensHome;
use lastpull_core::journal::{Fact, Subject};
use lastpull_core::screen::undo_of;
use crate::live::view;
use room::ScreenRoom;

/// Draws one of these screens.
pub fn screen(place: ScreensPlace) -> Drawn {
    match place {
        ScreensPlace::Home => view! { <ScreensHome/> },
        ScreensPlace::New => view! { <NewScreens run=None/> },
        ScreensPlace::NewFor(run) => view! { <NewScreens run/> },
        ScreensPlace::Card(id) => view! { <ScreenCardScreen id/> },
        ScreensPlace::Edit(id) => view! { <EditScreen id/> },
        ScreensPlace::Room => view! { <ScreenRoom/> },
    }
}

/// Records facts about screens and tells of them, with the way back.
fn record_with_undo(store: Store, facts: Vec<(Subject, Fact)>, text: String) {
    let undo = store.shop.with_untracked(|shop| undo_of(shop, &facts));
    store.record_all(facts);
    store.tell_with_undo(text, undo);
}
