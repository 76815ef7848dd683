//! The service worker, which stores the app for offline use. Without one (plain http, or switched off),
//! the app runs as long as its page is open.

use super::spawn::spawn_local;
use std::cell::RefCell;
use std::rc::Rc;
use wasm_bindgen::{JsCast, JsValue, closure::Closure};
use wasm_bindgen_futures::JsFuture;
use web_sys::{ServiceWorker, ServiceWorkerContainer, ServiceWorkerRegistration};

thread_local! {
    static WAITING: RefCell<Option<ServiceWorker>> = const { RefCell::new(None) };
}

fn container() -> Option<ServiceWorkerContainer> {
    let navigator = leptos::prelude::window().navigator();
    js_sys::Reflect::has(&navigator, &"serviceWorker".into()).unwrap_or(false).then(|| navigator.service_worker())
}

/// Registers the service worker. `ready` is called when the app is stored for offline use, `waiting` when a new
/// version is ready.
pub fn start(ready: impl Fn() + 'static, waiting: impl Fn() + 'static) {
    let Some(container) = container() else { return };
    let waiting = Rc::new(waiting);
    spawn_local(async move {
        let Ok(registration) = JsFuture::from(container.register("./sw.js")).await else { return };
        let registration: ServiceWorkerRegistration = registration.unchecked_into();
        note_waiting(&registration, &*waiting);
        let found = {
            let registration = registration.clone();
            let waiting = Rc::clone(&waiting);
            Closure::<dyn Fn()>::new(move || {
                let Some(worker) = registration.installing() else { return };
                let registration = registration.clone();
                let waiting = Rc::clone(&waiting);
                let changed = Closure::<dyn Fn()>::new(move || note_waiting(&registration, &*waiting));
                worker.set_onstatechange(Some(changed.as_ref().unchecked_ref()));
                changed.forget();
            })
        };
        registration.set_onupdatefound(Some(found.as_ref().unchecked_ref()));
        found.forget();
        if let Ok(promise) = container.ready() {
            if JsFuture::from(promise).await.is_ok() {
                ready();
            }
        }
    });
}

/// A worker that waits while another controls the page is a new version.
fn note_waiting(registration: &ServiceWorkerRegistration, waiting: &dyn Fn()) {
    if let Some(worker) = registration.waiting().filter(|_| registration.active().is_some()) {
        WAITING.set(Some(worker));
        waiting();
    }
}

/// Checks the server for a new version.
pub fn check_for_update() {
    let Some(container) = container() else { return };
    spawn_local(async move {
        if let Ok(promise) = container.ready() {
            if let Ok(registration) = JsFuture::from(promise).await {
                let registration: ServiceWorkerRegistration = registration.unchecked_into();
                if let Ok(update) = registration.update() {
                    let _ = JsFuture::from(update).await;
                }
            }
        }
    });
}

/// Activates the waiting version and reloads the page. Called when the user asked for it.
pub fn activate_update() {
    let Some(container) = container() else { return };
    let reload = Closure::<dyn Fn()>::new(super::dom::reload);
    container.set_oncontrollerchange(Some(reload.as_ref().unchecked_ref()));
    reload.forget();
    if let Some(worker) = WAITING.take() {
        let _ = worker.post_message(&JsValue::from_str("take over"));
    }
}
