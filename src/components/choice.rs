//! One of a few, and yes or no.

use leptos::prelude::*;

/// One of a few, as a row of buttons that wraps. Each option is its value and its words.
#[component]
pub fn Choice<T>(
    /// What is asked.
    #[prop(into)]
    label: String,
    /// A name for the group, unique on the screen.
    name: &'static str,
    /// What there is.
    options: Vec<(T, String)>,
    /// What is chosen.
    #[prop(into)]
    value: Signal<T>,
    /// Called with the new choice.
    on_pick: Callback<T>,
) -> impl IntoView
where
    T: Copy + PartialEq + Send + Sync + 'static,
{
    view! {
        <fieldset class="choice">
            <legend>{label}</legend>
            <div class="choice-row">
                {options
                    .into_iter()
                    .enumerate()
                    .map(|(index, (option, words))| {
                        let id = format!("{name}-{index}");
                        view! {
                            <span class="choice-option">
                                <input
                                    type="radio"
                                    id=id.clone()
                                    name=name
                                    prop:checked=move || value.get() == option
                                    on:change=move |_| on_pick.run(option)
                                />
                                <label for=id>{words}</label>
                            </span>
                        }
                    })
                    .collect_view()}
            </div>
        </fieldset>
    }
}

/// Yes or no.
#[component]
pub fn Switch(
    /// What is switched.
    #[prop(into)]
    label: String,
    /// What it means.
    #[prop(optional, into)]
    hint: String,
    /// An id, unique on the screen.
    id: &'static str,
    /// Whether it is on.
    #[prop(into)]
    value: Signal<bool>,
    /// Called with the new state.
    on_set: Callback<bool>,
) -> impl IntoView {
    view! {
        <div class="switch">
            <input
                type="checkbox"
                role="switch"
                id=id
                prop:checked=value
                on:change=move |event| on_set.run(crate::platform::dom::checked(&event))
            />
            <label for=id>
                <span>{label}</span>
                {(!hint.is_empty()).then(|| view! { <small>{hint}</small> })}
            </label>
        </div>
    }
}
