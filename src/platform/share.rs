//! Sharing a text. Shared if the device has a share sheet, else copied to the clipboard; if the browser can do
//! neither it says so, and the text stays on the page.

use js_sys::{Function, Promise, Reflect};
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;

/// How a text was shared.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ShareOutcome {
    /// Through the device's share sheet.
    Shared,
    /// Copied to the clipboard.
    Copied,
    /// The user closed the share sheet.
    Cancelled,
    /// The browser can do neither.
    Nowhere,
}

/// Shares a text, or copies it. Call it during the tap itself.
pub async fn share(text: &str) -> ShareOutcome {
    let navigator: JsValue = leptos::prelude::window().navigator().into();
    let data = js_sys::Object::new();
    // Setting a property of a plain object does not fail.
    let _ = Reflect::set(&data, &"text".into(), &text.into());
    match call(&navigator, "share", &data.into()) {
        Some(shared) => match JsFuture::from(shared).await {
            Ok(_) => ShareOutcome::Shared,
            Err(error) if is_abort(&error) => ShareOutcome::Cancelled,
            Err(_) => copy(&navigator, text).await,
        },
        None => copy(&navigator, text).await,
    }
}

async fn copy(navigator: &JsValue, text: &str) -> ShareOutcome {
    let clipboard = Reflect::get(navigator, &"clipboard".into()).unwrap_or_default();
    let Some(copied) = call(&clipboard, "writeText", &text.into()) else { return ShareOutcome::Nowhere };
    if JsFuture::from(copied).await.is_ok() { ShareOutcome::Copied } else { ShareOutcome::Nowhere }
}

/// The promise that a method returns; `None` if there is no such method, or it throws.
fn call(of: &JsValue, method: &str, with: &JsValue) -> Option<Promise> {
    if of.is_undefined() || of.is_null() {
        return None;
    }
    let method: Function = Reflect::get(of, &method.into()).ok()?.dyn_into().ok()?;
    method.call1(of, with).ok()?.dyn_into().ok()
}

fn is_abort(error: &JsValue) -> bool {
    Reflect::get(error, &"name".into()).ok().and_then(|name| name.as_string()).is_some_and(|name| name == "AbortError")
}
