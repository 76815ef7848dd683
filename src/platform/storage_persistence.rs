//! Whether the browser promises to keep the data, and how much room there is.

use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::StorageEstimate;

/// Room taken and left, in bytes, as the browser estimates it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StorageSpace {
    /// Taken.
    pub used: f64,
    /// Taken and left.
    pub quota: f64,
}

fn manager() -> Option<web_sys::StorageManager> {
    let navigator = leptos::prelude::window().navigator();
    js_sys::Reflect::has(&navigator, &"storage".into()).unwrap_or(false).then(|| navigator.storage())
}

/// Whether the browser has promised not to clear the data by itself. None where it does not say.
pub async fn is_persisted() -> Option<bool> {
    JsFuture::from(manager()?.persisted().ok()?).await.ok()?.as_bool()
}

/// Asks for that promise. None where it cannot be asked for.
pub async fn request_persist() -> Option<bool> {
    JsFuture::from(manager()?.persist().ok()?).await.ok()?.as_bool()
}

/// How much room there is. None where the browser does not say.
pub async fn space() -> Option<StorageSpace> {
    let estimate: JsValue = JsFuture::from(manager()?.estimate().ok()?).await.ok()?;
    let estimate: StorageEstimate = estimate.unchecked_into();
    Some(StorageSpace { used: estimate.get_usage()?, quota: estimate.get_quota()? })
}
