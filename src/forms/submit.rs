//! Submitting a form: validate, save, then continue.

use super::draft::Draft;
use crate::platform::{clock, dom, spawn_local};
use crate::route::Route;
use crate::store::Store;
use lastpull_core::facts::Fact;
use lastpull_core::form::Problems;
use lastpull_core::ids::Subject;
use leptos::prelude::*;
use serde::Serialize;
use serde::de::DeserializeOwned;
use std::time::Duration;

/// Facts to record.
pub type Facts = Vec<(Subject, Fact)>;

/// Facts of a form, or its problems.
pub type Validated<T = Facts, P = Problems> = Result<T, P>;

/// State of a form that is validated and saved on submit. `T` is what its validation gives.
pub struct FormSubmit<T: 'static = Facts, P: Send + Sync + 'static = Problems> {
    /// Problems found at the last validation, by field name.
    pub problems: RwSignal<P>,
    /// Whether saving is in progress.
    pub busy: RwSignal<bool>,
    /// Whether the last submit found problems.
    pub failed: RwSignal<bool>,
    /// What is typed and not saved yet.
    pub draft: Draft,
    check: StoredValue<Box<dyn Fn() -> Validated<T, P> + Send + Sync>>,
}

impl<T: 'static, P: Send + Sync + 'static> Clone for FormSubmit<T, P> {
    fn clone(&self) -> Self {
        *self
    }
}

impl<T: 'static, P: Send + Sync + 'static> Copy for FormSubmit<T, P> {}

impl<T: 'static, P: Default + PartialEq + Send + Sync + 'static> FormSubmit<T, P> {
    /// A form validated by `check`. After a failed submit it is validated again on every change.
    pub fn new(check: Box<dyn Fn() -> Validated<T, P> + Send + Sync>) -> Self {
        let submit = Self {
            problems: RwSignal::new(P::default()),
            busy: RwSignal::new(false),
            failed: RwSignal::new(false),
            draft: Draft::of_page(),
            check: StoredValue::new(check),
        };
        Effect::new(move || {
            if submit.failed.get() {
                submit.show(submit.check.with_value(|check| check()).err().unwrap_or_default());
            }
        });
        submit
    }

    /// Keeps what is typed into `form` until it is saved: see [`Draft::keep`].
    pub fn with_draft<F>(self, form: RwSignal<F>) -> Self
    where
        F: Clone + PartialEq + Serialize + DeserializeOwned + Send + Sync + 'static,
    {
        self.draft.keep(form);
        self
    }

    /// Says that a draft was restored, with a button to discard it.
    pub fn draft_line(self) -> AnyView {
        self.draft.line_with(move || {
            self.failed.set(false);
            self.problems.set(P::default());
        })
    }

    /// What `check` gives; `None` if it is invalid, and shows the problems and moves the keyboard focus to the first.
    pub fn validate(self) -> Option<T> {
        let checked = self.check.with_value(|check| leptos::reactive::graph::untrack(check));
        self.failed.set(checked.is_err());
        match checked {
            Err(found) => {
                self.show(found);
                focus_problem();
                None
            }
            Ok(valid) => {
                self.show(P::default());
                Some(valid)
            }
        }
    }

    /// Saves these facts, then calls `then`, unless the page was left meanwhile; nothing while another save is in progress.
    pub fn save(self, store: Store, facts: Facts, then: Box<dyn FnOnce()>) {
        if self.busy.get_untracked() {
            return;
        }
        self.busy.set(true);
        let draft = self.draft.endings();
        spawn_local(async move {
            let saved = facts.is_empty() || store.record_and_wait(facts).await;
            let is_left = self.busy.try_set(false).is_some();
            if saved {
                draft.saved();
                if !is_left {
                    self.draft.restored.set(false);
                    then();
                }
            }
        });
    }

    fn show(self, found: P) {
        if self.problems.with_untracked(|shown| *shown != found) {
            self.problems.set(found);
        }
    }
}

impl<P: Default + PartialEq + Send + Sync + 'static> FormSubmit<Facts, P> {
    /// Saves it, then navigates to a route, from which Back does not lead to the form; if it is invalid, shows the
    /// problems instead.
    pub fn submit(self, store: Store, event: &leptos::ev::SubmitEvent, then: Route) {
        self.submit_then(store, event, Box::new(move || then.replace()));
    }

    /// Saves it, then calls `then`; if it is invalid, shows the problems instead.
    pub fn submit_then(self, store: Store, event: &leptos::ev::SubmitEvent, then: Box<dyn FnOnce()>) {
        event.prevent_default();
        if let Some(facts) = self.validate() {
            self.save(store, facts, then);
        }
    }
}

/// Moves the keyboard focus to the first problem of a refused form, once it is drawn.
pub fn focus_problem() {
    clock::after(Duration::ZERO, dom::focus_problem);
}

/// The submit handler of a dialog that records at once and closes: calls `then` with what `check` gives, or shows the
/// problems.
pub fn submit_dialog<T, P: Send + Sync + 'static>(
    problems: RwSignal<P>,
    check: impl Fn() -> Validated<T, P> + 'static,
    then: impl Fn(T) + 'static,
) -> impl Fn(leptos::ev::SubmitEvent) + 'static {
    move |event| {
        event.prevent_default();
        match check() {
            Err(found) => {
                problems.set(found);
                focus_problem();
            }
            Ok(valid) => then(valid),
        }
    }
}
