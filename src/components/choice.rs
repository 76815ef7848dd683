//! Choice of one of a few options, and an on/off switch.

use leptos::prelude::*;

/// One of a few options, as a row of buttons that wraps.
#[component]
pub fn Choice<T>(
    /// Label of the group.
    #[prop(into)]
    label: String,
    /// Name of the radio group, unique on the page.
    name: &'static str,
    /// Value and label of each option.
    options: Vec<(T, String)>,
    /// The chosen value.
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

/// An on/off switch.
#[component]
pub fn Switch(
    /// Label.
    #[prop(into)]
    label: String,
    /// Explanation below the label.
    #[prop(optional, into)]
    hint: String,
    /// Element id, unique on the page.
    id: &'static str,
    /// Whether the switch is on.
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
