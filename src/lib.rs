//! The Lastpull app: pages over `lastpull_core`.
//!
//! A page draws a view-state that the core computes, and hands facts to the [`store`]. Browser APIs are called in
//! [`platform`] only. Which folder may import which is listed in DEVELOPERS.md and checked by a test.

// A new variant of a stored enum must not be swallowed by a wildcard arm.
#![warn(clippy::wildcard_enum_match_arm)]

use wasm_bindgen::prelude::wasm_bindgen;

pub mod platform;
pub mod route;

mod app;
mod components;
mod forms;
mod i18n;
mod lazy;
mod pages;
mod store;

/// Works on the whole journal in a worker (`work.js`): [`store::work`].
#[wasm_bindgen]
pub async fn work(task: Vec<u8>, file: wasm_bindgen::JsValue, tell: js_sys::Function) -> wasm_bindgen::JsValue {
    store::work(task, file, tell).await
}

/// Mounts the app to the page's body.
#[wasm_bindgen]
pub fn start() {
    std::panic::set_hook(Box::new(|panic| {
        console_error_panic_hook::hook(panic);
        platform::trouble::show_stopped();
    }));
    leptos::mount::mount_to_body(app::App);
}
