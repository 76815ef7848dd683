//! What forms have in common: checked when sent, saved, and on to the next place.

use crate::place::Place;
use crate::platform::spawn_local;
use crate::store::Store;
use lastpull_core::job::Problems;
use lastpull_core::journal::{Fact, Subject};
use leptos::prelude::*;

/// Facts of a form, or what is wrong with it.
pub type Checked = Result<Vec<(Subject, Fact)>, Problems>;

/// A form on its way to be saved.
#[derive(Clone, Copy)]
pub struct Sending {
    /// What is wrong with it.
    pub problems: RwSignal<Problems>,
    /// Whether saving is under way.
    pub busy: RwSignal<bool>,
    check: StoredValue<Box<dyn Fn() -> Checked + Send + Sync>>,
}

impl Sending {
    /// A form that is checked so. Once something was found wrong, it is looked at again with every change.
    pub fn new(check: Box<dyn Fn() -> Checked + Send + Sync>) -> Self {
        let sending = Self {
            problems: RwSignal::new(Problems::new()),
            busy: RwSignal::new(false),
            check: StoredValue::new(check),
        };
        Effect::new(move || {
            let found = sending.check.with_value(|check| check());
            if sending.problems.with_untracked(|problems| !problems.is_empty()) {
                sending.problems.set(found.err().unwrap_or_default());
            }
        });
        sending
    }

    /// Saves it, then goes to a place; or shows what is wrong.
    pub fn send(self, store: Store, event: &leptos::ev::SubmitEvent, then: Place) {
        self.send_then(store, event, Box::new(move || then.go()));
    }

    /// Saves it, then does something; or shows what is wrong.
    pub fn send_then(self, store: Store, event: &leptos::ev::SubmitEvent, then: Box<dyn FnOnce()>) {
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

/// The one fact that sets what differs, if anything does.
pub fn set<F>(id: Subject, fields: Vec<F>, fact: impl FnOnce(Vec<F>) -> Fact) -> Vec<(Subject, Fact)> {
    if fields.is_empty() { Vec::new() } else { vec![(id, fact(fields))] }
}

/// Deletes something and goes to the list it stood in; undo brings it back.
pub fn delete(store: Store, id: Subject, said: impl Into<String>, list: Place) {
    store.record(id, Fact::Deleted);
    store.tell_with_undo(said, vec![(id, Fact::Restored)]);
    list.go();
}
