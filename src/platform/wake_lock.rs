//! Keeps the screen awake. If the browser cannot, the screen dims as the device is set to; the
//! count does not depend on it.

use super::spawn::spawn_local;
use js_sys::{Function, Promise, Reflect};
use leptos::prelude::*;
use std::cell::{Cell, RefCell};
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;

thread_local! {
    static HELD: RefCell<Option<JsValue>> = const { RefCell::new(None) };
    static WANTED: Cell<bool> = const { Cell::new(false) };
}

/// Keeps the screen awake until [`let_sleep`]. The browser releases the lock when the
/// page is hidden; [`watch`] requests it again.
pub fn stay_awake() {
    WANTED.set(true);
    let released = |lock: &JsValue| Reflect::get(lock, &"released".into()).is_ok_and(|value| value.is_truthy());
    if HELD.with_borrow(|held| held.as_ref().is_some_and(|lock| !released(lock))) {
        return;
    }
    let navigator: JsValue = window().navigator().into();
    let Ok(wake_lock) = Reflect::get(&navigator, &"wakeLock".into()) else { return };
    let Some(asked) = call(&wake_lock, "request", &"screen".into()) else { return };
    spawn_local(async move {
        if let Ok(lock) = JsFuture::from(asked).await {
            HELD.set(Some(lock));
            if !WANTED.get() {
                let_sleep();
            }
        }
    });
}

/// Releases the wake lock.
pub fn let_sleep() {
    WANTED.set(false);
    if let Some(released) = HELD.take().and_then(|lock| call(&lock, "release", &JsValue::UNDEFINED)) {
        spawn_local(async move {
            let _ = JsFuture::from(released).await;
        });
    }
}

/// Calls a method that returns a promise, if it exists. The binding of the wake lock is
/// unstable.
fn call(object: &JsValue, method: &str, argument: &JsValue) -> Option<Promise> {
    let method: Function = Reflect::get(object, &method.into()).ok()?.dyn_into().ok()?;
    method.call1(object, argument).ok()?.dyn_into().ok()
}

/// Requests the lock again whenever the page becomes visible.
pub fn watch() {
    let again = wasm_bindgen::closure::Closure::<dyn Fn()>::new(|| {
        if WANTED.get() && document().visibility_state() == web_sys::VisibilityState::Visible {
            stay_awake();
        }
    });
    let _ = document().add_event_listener_with_callback("visibilitychange", again.as_ref().unchecked_ref());
    again.forget();
}
