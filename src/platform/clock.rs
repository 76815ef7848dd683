//! The time of day, and timers. Every browser has both.

use js_sys::Date;
use lastpull_core::time::WallClock;
use std::time::Duration;

/// This moment and the local offset.
pub fn now() -> WallClock {
    let date = Date::new_0();
    WallClock { now: date.get_time() as u64, offset_minutes: -(date.get_timezone_offset() as i32) }
}

/// Does something every so often, for as long as the page lives.
pub fn every(period: Duration, action: impl Fn() + 'static) {
    let _ = leptos::leptos_dom::helpers::set_interval_with_handle(action, period);
}

/// Does something once, later.
pub fn after(delay: Duration, action: impl FnOnce() + 'static) {
    leptos::leptos_dom::helpers::set_timeout(action, delay);
}

/// Waits.
pub async fn wait(delay: Duration) {
    let promise = js_sys::Promise::new(&mut |resolve, _| {
        after(delay, move || {
            let _ = resolve.call0(&wasm_bindgen::JsValue::UNDEFINED);
        });
    });
    let _ = wasm_bindgen_futures::JsFuture::from(promise).await;
}
