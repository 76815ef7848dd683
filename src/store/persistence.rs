//! Whether the browser keeps the data, and what the person should know of it.

use super::Store;
use crate::platform::storage_persistence::StorageSpace;
use crate::platform::{spawn_local, storage_persistence};
use leptos::prelude::*;

/// What is known of the keeping.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub struct Persistence {
    /// Whether the browser promised; none while it has not said.
    pub persisted: Option<bool>,
    /// Whether it was asked and declined.
    pub declined: bool,
    /// The room there is.
    pub space: Option<StorageSpace>,
}

impl Store {
    /// Looks at the promise and the room.
    pub fn refresh_persistence(self) {
        spawn_local(async move {
            let persisted = storage_persistence::is_persisted().await;
            let space = storage_persistence::space().await;
            self.persistence.update(|persistence| {
                persistence.persisted = persisted;
                persistence.space = space;
            });
        });
    }

    /// Asks the browser to keep the data. The reason stands on the screen that calls it.
    pub fn request_persistence(self) {
        spawn_local(async move {
            let persisted = storage_persistence::request_persist().await;
            self.persistence.update(|persistence| {
                persistence.persisted = persisted;
                persistence.declined = persisted != Some(true);
            });
        });
    }
}
