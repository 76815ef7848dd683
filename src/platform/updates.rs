//! The service worker, which stores the app for offline use and decides which build opens. Without one (plain http, or
//! switched off), the app runs as long as its page is open.

use super::spawn::spawn_local;
use super::worker::get;
use std::cell::{Cell, RefCell};
use std::time::Duration;
use wasm_bindgen::{JsCast, JsValue, closure::Closure};
use wasm_bindgen_futures::JsFuture;
use web_sys::{MessageEvent, ServiceWorker, ServiceWorkerContainer, ServiceWorkerRegistration};

/// How long a page waits for the browser to put a new worker in place of the old one.
const TAKING_OVER: Duration = Duration::from_secs(1);

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
    let on_message =
        Closure::<dyn Fn(MessageEvent)>::new(move |event: MessageEvent| on_answer(&event, &ready, &waiting));
    container.set_onmessage(Some(on_message.as_ref().unchecked_ref()));
    on_message.forget();
    spawn_local(async move {
        let Ok(registration) = JsFuture::from(container.register("./sw.js")).await else { return };
        let registration: ServiceWorkerRegistration = registration.unchecked_into();
        REGISTRATION.set(Some(registration.clone()));
        ask_waiting();
        let found = {
            let registration = registration.clone();
            Closure::<dyn Fn()>::new(move || {
                let Some(worker) = registration.installing() else { return };
                let changed = Closure::<dyn Fn()>::new(ask_waiting);
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

/// Asks a worker whether every file of its build is stored; it fetches what is missing. The answer says also which build
/// that is.
const IS_IT_STORED: &str = "is it stored?";

/// Asks the worker that runs whether the app is stored. The answer goes to `ready`.
pub fn check_stored() {
    tell(IS_IT_STORED);
}

/// Asks a worker that waits beside the one that runs. It may be of a newer build, or of this one: a build opens as soon as a
/// person asks for it, even if the browser lets the worker before it work on for a while.
fn ask_waiting() {
    if let (Some(worker), Some(_)) = (waiting_worker(), active_worker()) {
        let _ = worker.post_message(&JsValue::from_str(IS_IT_STORED));
    }
}

fn active_worker() -> Option<ServiceWorker> {
    REGISTRATION.with_borrow(|registration| registration.as_ref().and_then(ServiceWorkerRegistration::active))
}

fn waiting_worker() -> Option<ServiceWorker> {
    REGISTRATION.with_borrow(|registration| registration.as_ref().and_then(ServiceWorkerRegistration::waiting))
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
    active_worker().is_some_and(|worker| worker.post_message(&JsValue::from_str(message)).is_ok())
}

fn on_answer(event: &MessageEvent, ready: &dyn Fn(bool), waiting: &dyn Fn()) {
    let answer = event.data();
    if answer.as_string().as_deref() == Some("reload") {
        // The browser does not say how long the worker before it will work on.
        let wait = if waiting_worker().is_some() { TAKING_OVER } else { Duration::ZERO };
        super::clock::after(wait, super::history::reload);
        return;
    }
    let Some(stored) = get(&answer, "stored").as_bool() else { return };
    let worker: Option<ServiceWorker> = Some(get(event, "source").unchecked_into());
    let here = get(&js_sys::global(), "lastpullFolder").as_string().unwrap_or_default();
    let folder = get(&answer, "folder").as_string().unwrap_or_default();
    let is_of_page = here.ends_with(folder.trim_start_matches('.'));
    if worker == active_worker() {
        ready(stored);
        if is_of_page {
            tell("this build is open");
        }
    }
    // The newest worker may be of a newer build than this page, also if the browser runs it already. Builds may have the
    // folder of the app in common.
    let opens_page = is_of_page && get(&answer, "opens").is_truthy();
    if opens_page && worker == waiting_worker() {
        // Somebody asked for it, and the page came before the browser put the worker in its place.
        let _ = worker.map(|worker| worker.post_message(&JsValue::from_str("skip waiting")));
    } else if !opens_page && worker == waiting_worker().or_else(active_worker) {
        NEWER.set(worker);
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

/// Opens the newer build. The page loads again once the browser has put its worker in place of the one before, or soon after
/// the worker says that its build is chosen. Called when the user asked for it.
pub fn open_newer() {
    let Some(container) = container() else { return };
    let taken_over = Closure::<dyn Fn()>::new(super::history::reload);
    container.set_oncontrollerchange(Some(taken_over.as_ref().unchecked_ref()));
    taken_over.forget();
    if let Some(worker) = NEWER.take() {
        let _ = worker.post_message(&JsValue::from_str("take over"));
    }
}
