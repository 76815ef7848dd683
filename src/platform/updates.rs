//! The service worker, which stores the app for offline use and decides which build opens. Without one (plain http, or
//! switched off), the app runs as long as its page is open.

use super::spawn::spawn_local;
use super::worker::get;
use std::cell::{Cell, RefCell};
use std::rc::Rc;
use wasm_bindgen::{JsCast, JsValue, closure::Closure};
use wasm_bindgen_futures::JsFuture;
use web_sys::{MessageEvent, ServiceWorker, ServiceWorkerContainer, ServiceWorkerRegistration};

thread_local! {
    /// The worker of a newer build: it waits, or it runs and serves this build until a person asks for its own.
    static NEWER: RefCell<Option<ServiceWorker>> = const { RefCell::new(None) };
    static REGISTRATION: RefCell<Option<ServiceWorkerRegistration>> = const { RefCell::new(None) };
    /// What was last said about a run on the press.
    static HELD: Cell<Option<bool>> = const { Cell::new(None) };
}

fn container() -> Option<ServiceWorkerContainer> {
    let navigator = leptos::prelude::window().navigator();
    js_sys::Reflect::has(&navigator, &"serviceWorker".into()).unwrap_or(false).then(|| navigator.service_worker())
}

/// Registers the service worker. `ready` is told whether the whole app is stored for offline use, at each answer to
/// [`check_stored`]; `waiting` is called when a new version is ready.
pub fn start(ready: impl Fn(bool) + 'static, waiting: impl Fn() + 'static) {
    let Some(container) = container() else { return };
    let waiting = Rc::new(waiting);
    let on_message = {
        let waiting = Rc::clone(&waiting);
        Closure::<dyn Fn(MessageEvent)>::new(move |event: MessageEvent| on_answer(&event.data(), &ready, &*waiting))
    };
    container.set_onmessage(Some(on_message.as_ref().unchecked_ref()));
    on_message.forget();
    spawn_local(async move {
        let Ok(registration) = JsFuture::from(container.register("./sw.js")).await else { return };
        let registration: ServiceWorkerRegistration = registration.unchecked_into();
        REGISTRATION.set(Some(registration.clone()));
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
                check_stored();
            }
        }
    });
}

/// Asks the worker whether every file of the app is stored; it fetches what is missing. The answer goes to `ready`.
pub fn check_stored() {
    tell("is it stored?");
}

/// Says whether a run is on the press: until it is over, the app opens with the build that it has now.
pub fn hold(printing: bool) {
    if HELD.replace(Some(printing)) != Some(printing)
        && !tell(if printing { "a run is on the press" } else { "no run is on the press" })
    {
        HELD.set(None);
    }
}

/// Sends a message to the worker that runs; false if there is none.
fn tell(message: &str) -> bool {
    REGISTRATION.with_borrow(|registration| {
        let worker = registration.as_ref().and_then(ServiceWorkerRegistration::active);
        worker.is_some_and(|worker| worker.post_message(&JsValue::from_str(message)).is_ok())
    })
}

fn on_answer(answer: &JsValue, ready: &dyn Fn(bool), waiting: &dyn Fn()) {
    if answer.as_string().as_deref() == Some("reload") {
        super::dom::reload();
        return;
    }
    let Some(stored) = get(answer, "stored").as_bool() else { return };
    ready(stored);
    // The worker may be of a newer build than this page.
    let here = get(&js_sys::global(), "lastpullFolder").as_string().unwrap_or_default();
    let folder = get(answer, "folder").as_string().unwrap_or_default();
    let active =
        REGISTRATION.with_borrow(|registration| registration.as_ref().and_then(ServiceWorkerRegistration::active));
    if here.ends_with(folder.trim_start_matches('.')) {
        tell("this build is open");
    } else if NEWER.with_borrow(Option::is_none) {
        NEWER.set(active);
        waiting();
    }
}

/// A worker that waits while another controls the page is a new version.
fn note_waiting(registration: &ServiceWorkerRegistration, waiting: &dyn Fn()) {
    if let Some(worker) = registration.waiting().filter(|_| registration.active().is_some()) {
        NEWER.set(Some(worker));
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

/// Opens the newer build and reloads the page. Called when the user asked for it.
pub fn activate_update() {
    let Some(container) = container() else { return };
    let reload = Closure::<dyn Fn()>::new(super::dom::reload);
    container.set_oncontrollerchange(Some(reload.as_ref().unchecked_ref()));
    reload.forget();
    if let Some(worker) = NEWER.take() {
        let _ = worker.post_message(&JsValue::from_str("take over"));
    }
}
