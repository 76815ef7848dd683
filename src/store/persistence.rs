//! Whether the browser keeps the data permanently.

use super::Store;
use crate::platform::storage_persistence::StorageSpace;
use crate::platform::{spawn_local, storage_persistence};
use leptos::prelude::*;

/// What is known of the storage's persistence.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub struct Persistence {
    /// Whether the browser promised to keep the data; `None` until it answers.
    pub persisted: Option<bool>,
    /// Whether it was asked and declined.
    pub declined: bool,
    /// The storage space.
    pub space: Option<StorageSpace>,
}

impl Store {
    /// Reads the promise and the storage space again.
    pub fn refresh_persistence(self) {
        spawn_local(async move {
            let persisted = storage_persistence::is_persisted().await;
            let space = storage_persistence::space().await;
            self.setters().persistence.update(|persistence| {
                persistence.persisted = persisted;
                persistence.space = space;
            });
        });
    }

    /// Asks the browser to keep the data. The page that calls it states the reason.
    pub fn request_persistence(self) {
        spawn_local(async move {
            let persisted = storage_persistence::request_persist().await;
            self.setters().persistence.update(|persistence| {
                persistence.persisted = persisted;
                persistence.declined = persisted != Some(true);
            });
        });
    }
}
