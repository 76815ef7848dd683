//! A photo's object URL: fetched once, and revoked when the component that shows it is unmounted.

use crate::platform::{pictures, spawn_local};
use crate::store::PhotoSource;
use leptos::prelude::*;
use std::sync::{Arc, Mutex, PoisonError};

/// The object URL, and whether the component is unmounted.
#[derive(Default)]
struct UrlHolder {
    address: Option<String>,
    gone: bool,
}

/// Fetches a photo on demand, and revokes its URL when the component is unmounted.
#[derive(Clone)]
pub struct PhotoFetcher {
    /// The result; `None` until it arrives.
    pub shown: RwSignal<Option<PhotoSource>>,
    held: Arc<Mutex<UrlHolder>>,
}

impl PhotoFetcher {
    /// Call it while a component is set up.
    pub fn new() -> Self {
        let held: Arc<Mutex<UrlHolder>> = Arc::default();
        let letting_go = Arc::clone(&held);
        on_cleanup(move || {
            let mut held = letting_go.lock().unwrap_or_else(PoisonError::into_inner);
            held.gone = true;
            if let Some(address) = held.address.take() {
                pictures::revoke_url(&address);
            }
        });
        Self { shown: RwSignal::new(None), held }
    }

    /// Fetches the photo.
    pub fn fetch(&self, fetched: impl Future<Output = PhotoSource> + 'static) {
        let (shown, held) = (self.shown, Arc::clone(&self.held));
        spawn_local(async move {
            let fetched = fetched.await;
            let mut held = held.lock().unwrap_or_else(PoisonError::into_inner);
            if let PhotoSource::Url(address) = &fetched {
                if held.gone {
                    return pictures::revoke_url(address);
                }
                held.address = Some(address.clone());
            }
            drop(held);
            shown.set(Some(fetched));
        });
    }
}
