//! A value that is reported once it has not changed for a while, so that not every intermediate value becomes
//! a fact. A value not reported yet is reported when the component is unmounted or the page is hidden: a phone may
//! end a hidden page without a further word.

use crate::platform::clock;
use leptos::leptos_dom::helpers::WindowListenerHandle;
use leptos::prelude::*;
use std::time::Duration;

/// Time without a change after which the value is reported.
const REPORT_DELAY: Duration = Duration::from_millis(700);

/// A value that is reported with a delay.
pub struct Debounced<T: Send + Sync + 'static> {
    /// The current value; `None` if it equals the reported one.
    pub shown: RwSignal<Option<T>>,
    pending: StoredValue<Option<T>>,
    turn: StoredValue<u32>,
    report: Callback<T>,
}

impl<T: Send + Sync + 'static> Clone for Debounced<T> {
    fn clone(&self) -> Self {
        *self
    }
}

impl<T: Send + Sync + 'static> Copy for Debounced<T> {}

impl<T: Clone + Send + Sync + 'static> Debounced<T> {
    /// Creates it; `report` is called with each reported value. Call it while a component is set up.
    pub fn new(report: Callback<T>) -> Self {
        let debounced =
            Self { shown: RwSignal::new(None), pending: StoredValue::new(None), turn: StoredValue::new(0), report };
        let listeners = ["visibilitychange", "pagehide"]
            .map(|event| window_event_listener_untyped(event, move |_| debounced.report_pending()));
        on_cleanup(move || {
            listeners.into_iter().for_each(WindowListenerHandle::remove);
            debounced.report_pending();
        });
        debounced
    }

    /// Sets the value and restarts the delay.
    pub fn set(self, value: T) {
        self.shown.set(Some(value.clone()));
        self.pending.set_value(Some(value));
        let turn = self.turn.get_value().wrapping_add(1);
        self.turn.set_value(turn);
        clock::after(REPORT_DELAY, move || {
            // `None` once the component is unmounted; another number if the value changed again.
            if self.turn.try_get_value() == Some(turn) {
                self.report_pending();
            }
        });
    }

    /// Sets the value and reports it at once.
    pub fn done(self, value: T) {
        self.set(value);
        self.report_pending();
    }

    fn report_pending(self) {
        if let Some(value) = self.pending.try_update_value(Option::take).flatten() {
            self.report.run(value);
        }
    }
}
