//! Whether the browser keeps the data permanently, and how much space there is.

use super::worker::get;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::StorageEstimate;

/// Storage space in bytes, as the browser estimates it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StorageSpace {
    /// Bytes used.
    pub used: f64,
    /// Bytes used and free together.
    pub quota: f64,
}

fn manager() -> Option<web_sys::StorageManager> {
    // Of the global scope: a worker has no window.
    let storage = get(&get(&js_sys::global(), "navigator"), "storage");
    storage.is_object().then(|| storage.unchecked_into())
}

/// Whether the browser promised not to clear the data by itself; `None` if it does not say.
pub async fn is_persisted() -> Option<bool> {
    JsFuture::from(manager()?.persisted().ok()?).await.ok()?.as_bool()
}

/// Asks for that promise; `None` if the browser has no such request.
pub async fn request_persist() -> Option<bool> {
    JsFuture::from(manager()?.persist().ok()?).await.ok()?.as_bool()
}

/// The storage space; `None` if the browser does not say.
pub async fn space() -> Option<StorageSpace> {
    let estimate: JsValue = JsFuture::from(manager()?.estimate().ok()?).await.ok()?;
    let estimate: StorageEstimate = estimate.unchecked_into();
    Some(StorageSpace { used: estimate.get_usage()?, quota: estimate.get_quota()? })
}
