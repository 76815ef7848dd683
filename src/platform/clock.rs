//! The time of day, the time zone, and timers.

use js_sys::{Date, Function, Reflect};
use lastpull_core::time::{Millis, WallClock, WallTime, Zone, offset_changes};
use std::cell::Cell;
use std::time::Duration;
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};

thread_local! {
    static ZONE: Cell<Option<Zone>> = const { Cell::new(None) };
}

/// How far ahead and back the changes of the zone's offset are known. Days further away have the nearest offset.
const ZONE_REACH: Millis = Millis::from_days(800);

/// The current wall time in the device's time zone.
pub fn now() -> WallClock {
    let now = WallTime::from_unix_ms(Date::now() as u64);
    WallClock { now, zone: zone(now) }
}

/// Minutes that local time is ahead of UTC at a moment.
fn offset_at(at: WallTime) -> i32 {
    -(Date::new(&JsValue::from_f64(at.unix_ms() as f64)).get_timezone_offset() as i32)
}

/// The device's time zone: read once, and again when it is found to be another one by its offset now or in half a year.
fn zone(now: WallTime) -> Zone {
    let signs = [now, now + Millis::from_days(182)];
    if let Some(zone) = ZONE.get().filter(|zone| signs.iter().all(|at| zone.offset_at(*at) == offset_at(*at))) {
        return zone;
    }
    let (minutes, changes) = offset_changes(offset_at, now - ZONE_REACH, now + ZONE_REACH);
    // Kept until the page is closed: a device changes its zone a few times a year.
    let zone = Zone::new(minutes, changes.leak());
    ZONE.set(Some(zone));
    zone
}

/// Calls `action` at every `period`, until the page is closed.
pub fn every(period: Duration, action: impl Fn() + 'static) {
    let _ = leptos::leptos_dom::helpers::set_interval_with_handle(action, period);
}

/// Calls `action` once, after `delay`.
pub fn after(delay: Duration, action: impl FnOnce() + 'static) {
    // Of the global scope: a worker has no window.
    let action = Closure::once_into_js(action);
    let set_timeout = Reflect::get(&js_sys::global(), &"setTimeout".into()).and_then(JsCast::dyn_into::<Function>);
    if let Ok(set_timeout) = set_timeout {
        let _ = set_timeout.call2(&JsValue::UNDEFINED, &action, &JsValue::from_f64(delay.as_millis() as f64));
    }
}

/// Resolves after `delay`.
pub async fn wait(delay: Duration) {
    let promise = js_sys::Promise::new(&mut |resolve, _| {
        after(delay, move || {
            let _ = resolve.call0(&wasm_bindgen::JsValue::UNDEFINED);
        });
    });
    let _ = wasm_bindgen_futures::JsFuture::from(promise).await;
}
