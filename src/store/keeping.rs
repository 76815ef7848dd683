//! Whether the browser keeps the data, and what the person should know of it.

use super::Store;
use crate::platform::keeping::{self, Room};
use crate::platform::spawn_local;
use leptos::prelude::*;

/// What is known of the keeping.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub struct Kept {
    /// Whether the browser promised; none while it has not said.
    pub promised: Option<bool>,
    /// Whether it was asked and declined.
    pub declined: bool,
    /// The room there is.
    pub room: Option<Room>,
}

impl Store {
    /// Looks at the promise and the room.
    pub fn look_at_keeping(self) {
        spawn_local(async move {
            let promised = keeping::is_promised().await;
            let room = keeping::room().await;
            self.kept.update(|kept| {
                kept.promised = promised;
                kept.room = room;
            });
        });
    }

    /// Asks the browser to keep the data. The reason stands on the screen that calls it.
    pub fn ask_keeping(self) {
        spawn_local(async move {
            let promised = keeping::ask_promise().await;
            self.kept.update(|kept| {
                kept.promised = promised;
                kept.declined = promised != Some(true);
            });
        });
    }
}
