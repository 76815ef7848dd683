//! Submitting a form: validate, save, then continue.

use crate::platform::spawn_local;
use crate::route::Route;
use crate::store::Store;
use lastpull_core::facts::Fact;
use lastpull_core::form::Problems;
use lastpull_core::ids::Subject;
use leptos::prelude::*;

/// Facts of a form, or its problems.
pub type Validated = Result<Vec<(Subject, Fact)>, Problems>;

/// State of a form that is validated and saved on submit.
#[derive(Clone, Copy)]
pub struct FormSubmit {
    /// Problems found at the last validation, by field name.
    pub problems: RwSignal<Problems>,
    /// Whether saving is in progress.
    pub busy: RwSignal<bool>,
    check: StoredValue<Box<dyn Fn() -> Validated + Send + Sync>>,
}

impl FormSubmit {
    /// A form validated by `check`. After a first failed submit it is validated again on every change.
    pub fn new(check: Box<dyn Fn() -> Validated + Send + Sync>) -> Self {
        let submit = Self {
            problems: RwSignal::new(Problems::new()),
            busy: RwSignal::new(false),
            check: StoredValue::new(check),
        };
        Effect::new(move || {
            let found = submit.check.with_value(|check| check());
            if submit.problems.with_untracked(|problems| !problems.is_empty()) {
                submit.problems.set(found.err().unwrap_or_default());
            }
        });
        submit
    }

    /// Saves it, then navigates to a route; if it is invalid, shows the problems instead.
    pub fn submit(self, store: Store, event: &leptos::ev::SubmitEvent, then: Route) {
        self.submit_then(store, event, Box::new(move || then.navigate()));
    }

    /// Saves it, then calls `then`; if it is invalid, shows the problems instead.
    pub fn submit_then(self, store: Store, event: &leptos::ev::SubmitEvent, then: Box<dyn FnOnce()>) {
        event.prevent_default();
        let Some(facts) = self.validate() else { return };
        self.busy.set(true);
        spawn_local(async move {
            let saved = facts.is_empty() || store.record_and_wait(facts).await;
            self.busy.set(false);
            if saved {
                then();
            }
        });
    }

    /// Its facts; `None` if it is invalid, and shows the problems.
    pub fn validate(self) -> Option<Vec<(Subject, Fact)>> {
        match self.check.with_value(|check| leptos::reactive::graph::untrack(check)) {
            Err(found) => {
                self.problems.set(found);
                None
            }
            Ok(facts) => {
                self.problems.set(Problems::new());
                Some(facts)
            }
        }
    }
}

/// The submit handler of a dialog that records at once and closes: calls `then` with what `check` gives, or shows the
/// problems.
pub fn submit_dialog<T>(
    problems: RwSignal<Problems>,
    check: impl Fn() -> Result<T, Problems> + 'static,
    then: impl Fn(T) + 'static,
) -> impl Fn(leptos::ev::SubmitEvent) + 'static {
    move |event| {
        event.prevent_default();
        match check() {
            Err(found) => problems.set(found),
            Ok(valid) => then(valid),
        }
    }
}
