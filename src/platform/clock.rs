//! The time of day, and timers.

use js_sys::Date;
use lastpull_core::time::{WallClock, WallTime};
use std::time::Duration;

/// The current wall time and the local UTC offset.
pub fn now() -> WallClock {
    let date = Date::new_0();
    let now = WallTime::from_unix_ms(date.get_time() as u64);
    WallClock { now, offset_minutes: -(date.get_timezone_offset() as i32) }
}

/// Calls `action` at every `period`, until the page is closed.
pub fn every(period: Duration, action: impl Fn() + 'static) {
    let _ = leptos::leptos_dom::helpers::set_interval_with_handle(action, period);
}

/// Calls `action` once, after `delay`.
pub fn after(delay: Duration, action: impl FnOnce() + 'static) {
    leptos::leptos_dom::helpers::set_timeout(action, delay);
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
