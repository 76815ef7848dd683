//! The second tap of a double tap, which must not do a second time what the first one did.

use leptos::prelude::*;
use web_sys::Event;

/// Longest time from one tap of a double tap to the next, in milliseconds. Our own.
const LONGEST_PAUSE: f64 = 500.0;

/// Remembers when something was last done by a tap.
#[derive(Clone, Copy)]
pub struct RepeatedTap {
    done_at: StoredValue<f64>,
}

impl RepeatedTap {
    /// Nothing was done yet.
    pub fn new() -> Self {
        Self { done_at: StoredValue::new(f64::NEG_INFINITY) }
    }

    /// Whether the event may be the second tap of the one that did it last.
    pub fn is_second(self, event: &Event) -> bool {
        event.time_stamp() - self.done_at.get_value() < LONGEST_PAUSE
    }

    /// The event did it now.
    pub fn done(self, event: &Event) {
        self.done_at.set_value(event.time_stamp());
    }
}
