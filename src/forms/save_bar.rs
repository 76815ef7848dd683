//! The foot of a form.

use crate::i18n;
use lastpull_core::form::Problems;
use leptos::prelude::*;

/// The foot of a form: save, and how many things are wrong.
#[component]
pub fn SaveBar(
    /// What is wrong with the form.
    #[prop(into)]
    problems: Signal<Problems>,
    /// Whether saving is under way.
    #[prop(into)]
    busy: Signal<bool>,
    /// What the button says, where it is not just saved.
    #[prop(optional)]
    words: &'static str,
) -> impl IntoView {
    let says = if words.is_empty() { i18n::save() } else { words };
    view! {
        <div class="save-bar">
            <p class="problem" role="alert">
                {move || problems.with(|problems| {
                    (!problems.is_empty()).then(|| i18n::form_not_saved(problems.len() as u32))
                })}
            </p>
            <button type="submit" class="button primary" disabled=busy>
                {move || if busy.get() { i18n::saving() } else { says }}
            </button>
        </div>
    }
}
