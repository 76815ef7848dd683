//! A photo's bytes on screen: fetched once, at an address that is let go of with whatever shows it.

use crate::platform::{pictures, spawn_local};
use crate::store::PhotoSource;
use leptos::prelude::*;
use std::sync::{Arc, Mutex, PoisonError};

/// Where the address is, and whether what shows it is gone.
#[derive(Default)]
struct Held {
    address: Option<String>,
    gone: bool,
}

/// Fetches what a component shows, when it is asked to, and lets go of it with the component.
#[derive(Clone)]
pub struct Fetching {
    /// What came; none yet.
    pub shown: RwSignal<Option<PhotoSource>>,
    held: Arc<Mutex<Held>>,
}

impl Fetching {
    /// To be made while the component is set up.
    pub fn new() -> Self {
        let held: Arc<Mutex<Held>> = Arc::default();
        let letting_go = Arc::clone(&held);
        on_cleanup(move || {
            let mut held = letting_go.lock().unwrap_or_else(PoisonError::into_inner);
            held.gone = true;
            if let Some(address) = held.address.take() {
                pictures::let_go(&address);
            }
        });
        Self { shown: RwSignal::new(None), held }
    }

    /// Fetches it.
    pub fn fetch(&self, fetched: impl Future<Output = PhotoSource> + 'static) {
        let (shown, held) = (self.shown, Arc::clone(&self.held));
        spawn_local(async move {
            let fetched = fetched.await;
            let mut held = held.lock().unwrap_or_else(PoisonError::into_inner);
            if let PhotoSource::Url(address) = &fetched {
                if held.gone {
                    return pictures::let_go(address);
                }
                held.address = Some(address.clone());
            }
            drop(held);
            shown.set(Some(fetched));
        });
    }
}
