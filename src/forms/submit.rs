//! What forms have in common: checked when sent, saved, and on to the next place.

use crate::platform::spawn_local;
use crate::route::Route;
use crate::store::Store;
use lastpull_core::facts::Fact;
use lastpull_core::form::Problems;
use lastpull_core::ids::Subject;
use leptos::prelude::*;

/// Facts of a form, or what is wrong with it.
pub type Validated = Result<Vec<(Subject, Fact)>, Problems>;

/// A form on its way to be saved.
#[derive(Clone, Copy)]
pub struct FormSubmit {
    /// What is wrong with it.
    pub problems: RwSignal<Problems>,
    /// Whether saving is under way.
    pub busy: RwSignal<bool>,
    check: StoredValue<Box<dyn Fn() -> Validated + Send + Sync>>,
}

impl FormSubmit {
    /// A form that is checked so. Once something was found wrong, it is looked at again with every change.
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

    /// Saves it, then goes to a place; or shows what is wrong.
    pub fn submit(self, store: Store, event: &leptos::ev::SubmitEvent, then: Route) {
        self.submit_then(store, event, Box::new(move || then.navigate()));
    }

    /// Saves it, then does something; or shows what is wrong.
    pub fn submit_then(self, store: Store, event: &leptos::ev::SubmitEvent, then: Box<dyn FnOnce()>) {
        event.prevent_default();
        match self.check.with_value(|check| leptos::reactive::graph::untrack(check)) {
            Err(found) => self.problems.set(found),
            Ok(facts) => {
                self.problems.set(Problems::new());
                self.busy.set(true);
                spawn_local(async move {
                    let saved = facts.is_empty() || store.record_and_wait(facts).await;
                    self.busy.set(false);
                    if saved {
                        then();
                    }
                });
            }
        }
    }
}
