//! The message for an app that has stopped. It is in the page itself (`index.html`, `recover.js`): after a panic nothing
//! that the app draws can be relied on. Where that script is missing, the error is in the console only.

use super::worker::get;
use js_sys::Function;
use wasm_bindgen::{JsCast, JsValue};

/// Shows it.
pub fn show_stopped() {
    if let Ok(show) = get(&js_sys::global(), "lastpullStopped").dyn_into::<Function>() {
        let _ = show.call0(&JsValue::UNDEFINED);
    }
}
