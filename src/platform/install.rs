//! Installing the app on the home screen. Chromium lets the page ask; iOS needs the share menu; other browsers
//! have it in their own menu.

use std::cell::RefCell;
use wasm_bindgen::{JsCast, JsValue, closure::Closure};
use web_sys::Event;

thread_local! {
    static OFFER: RefCell<Option<Event>> = const { RefCell::new(None) };
}

/// How the app is installed on this device.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Method {
    /// It is installed and running as an app.
    Done,
    /// The page can ask, from a button.
    Button,
    /// Share menu, "Add to Home Screen".
    ShareMenu,
    /// The browser's own menu, if at all.
    BrowserMenu,
}

/// Keeps the browser's install prompt when it is offered, and calls `changed`.
pub fn watch(changed: impl Fn() + 'static) {
    let keep = Closure::<dyn Fn(Event)>::new(move |event: Event| {
        event.prevent_default();
        OFFER.set(Some(event));
        changed();
    });
    let window = leptos::prelude::window();
    let _ = window.add_event_listener_with_callback("beforeinstallprompt", keep.as_ref().unchecked_ref());
    keep.forget();
}

/// How the app is installed on this device, as far as known now.
pub fn method() -> Method {
    let window = leptos::prelude::window();
    let standalone =
        window.match_media("(display-mode: standalone)").ok().flatten().is_some_and(|query| query.matches());
    let navigator: JsValue = window.navigator().into();
    // Only iOS has `navigator.standalone`; it says whether the app runs from the home screen.
    let ios = js_sys::Reflect::get(&navigator, &"standalone".into()).ok().and_then(|value| value.as_bool());
    match (standalone || ios == Some(true), OFFER.with_borrow(Option::is_some), ios) {
        (true, ..) => Method::Done,
        (_, true, _) => Method::Button,
        (_, _, Some(_)) => Method::ShareMenu,
        _ => Method::BrowserMenu,
    }
}

/// Shows the browser's install prompt.
pub fn ask() {
    if let Some(offer) = OFFER.take() {
        if let Ok(prompt) = js_sys::Reflect::get(&offer, &"prompt".into()) {
            if let Some(prompt) = prompt.dyn_ref::<js_sys::Function>() {
                let _ = prompt.call0(&offer);
            }
        }
    }
}
