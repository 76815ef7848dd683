//! A value set by a hand that goes on setting it: told once the hand rests, so that not every touch on
//! the way becomes a fact. What is not told yet is told when its place on the screen goes.

use crate::platform::clock;
use leptos::prelude::*;
use std::time::Duration;

/// How long the hand rests.
const REST: Duration = Duration::from_millis(700);

/// A value on its way.
pub struct Debounced<T: Send + Sync + 'static> {
    /// The value as the hand has it; none while it is as it was told.
    pub shown: RwSignal<Option<T>>,
    pending: StoredValue<Option<T>>,
    turn: StoredValue<u32>,
    tell: Callback<T>,
}

impl<T: Send + Sync + 'static> Clone for Debounced<T> {
    fn clone(&self) -> Self {
        *self
    }
}

impl<T: Send + Sync + 'static> Copy for Debounced<T> {}

impl<T: Clone + Send + Sync + 'static> Debounced<T> {
    /// To be made while the component is set up.
    pub fn new(tell: Callback<T>) -> Self {
        let resting =
            Self { shown: RwSignal::new(None), pending: StoredValue::new(None), turn: StoredValue::new(0), tell };
        on_cleanup(move || resting.tell_pending());
        resting
    }

    /// The hand has it so now.
    pub fn set(self, value: T) {
        self.shown.set(Some(value.clone()));
        self.pending.set_value(Some(value));
        let turn = self.turn.get_value().wrapping_add(1);
        self.turn.set_value(turn);
        clock::after(REST, move || {
            // Gone with its screen, or moved on since.
            if self.turn.try_get_value() == Some(turn) {
                self.tell_pending();
            }
        });
    }

    /// The hand is done.
    pub fn done(self, value: T) {
        self.set(value);
        self.tell_pending();
    }

    fn tell_pending(self) {
        if let Some(value) = self.pending.try_update_value(Option::take).flatten() {
            self.tell.run(value);
        }
    }
}
