//! The bar with the save button at the end of a form.

use crate::i18n;
use lastpull_core::form::Problems;
use leptos::prelude::*;

/// The save button, and the number of problems.
#[component]
pub fn SaveBar(
    /// Problems of the form, by field name.
    #[prop(into)]
    problems: Signal<Problems>,
    /// Whether saving is in progress.
    #[prop(into)]
    busy: Signal<bool>,
    /// Text of the button, if other than "Save".
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
