//! The style sheet of the chunks. The browser tests are built without chunks, and have none to load.

use super::worker::get;
use js_sys::Promise;
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;

/// Requests it at once, if it is not loaded yet; the future says whether it loaded.
pub fn load_lazy() -> impl Future<Output = bool> {
    // Awaited from now on, not only when the future is polled: otherwise the browser reports an unhandled rejection.
    let coming = JsFuture::from(ask());
    async { coming.await.is_ok() }
}

const ID: &str = "later-style";

fn ask() -> Promise {
    let document = leptos::prelude::document();
    let Some(folder) = get(&js_sys::global(), "lastpullFolder").as_string() else {
        return Promise::resolve(&JsValue::TRUE);
    };
    let link = document.get_element_by_id(ID).or_else(|| {
        let link = document.create_element("link").ok()?;
        link.set_id(ID);
        let _ = link.set_attribute("rel", "stylesheet");
        let _ = link.set_attribute("href", &format!("{folder}lazy.css"));
        document.head()?.append_child(&link).ok()?;
        Some(link)
    });
    let Some(link) = link else { return Promise::reject(&JsValue::FALSE) };
    if !get(&link, "sheet").is_null() {
        return Promise::resolve(&JsValue::TRUE);
    }
    Promise::new(&mut |came, missed| {
        let _ = link.add_event_listener_with_callback("load", &came);
        let failed = link.clone();
        let gone = Closure::once_into_js(move || {
            // Removed, so that the next call requests it again.
            failed.remove();
            let _ = missed.call0(&JsValue::UNDEFINED);
        });
        let _ = link.add_event_listener_with_callback("error", gone.unchecked_ref());
    })
}
