//! Binds an input to a text of a form.

use leptos::prelude::*;

/// A text of a form and its setter.
#[derive(Clone, Copy)]
pub struct Bound {
    /// The text as typed.
    pub value: Signal<String>,
    /// Called with the new text on every change.
    pub set: Callback<String>,
}

/// Binds an input to the text of a form that `text` returns.
pub fn bound<F: Clone + Send + Sync + 'static>(form: RwSignal<F>, text: fn(&mut F) -> &mut String) -> Bound {
    Bound {
        value: Signal::derive(move || form.with(|form| text(&mut form.clone()).clone())),
        set: Callback::new(move |typed| form.update(|form| *text(form) = typed)),
    }
}
