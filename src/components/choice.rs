//! Choice of one of a few options, and an on/off switch.

use leptos::prelude::*;
use std::sync::Arc;

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
    let (values, labels): (Vec<T>, Vec<String>) = options.into_iter().unzip();
    let values: Arc<[T]> = values.into();
    let of_place = Arc::clone(&values);
    let chosen = Memo::new(move |_| of_place.iter().position(|option| *option == value.get()));
    let pick = Callback::new(move |place: usize| {
        if let Some(option) = values.get(place) {
            on_pick.run(*option);
        }
    });
    radio_buttons(label, name, labels, chosen, pick)
}

/// The buttons by their place: compiled once, not for each type of value.
fn radio_buttons(
    label: String,
    name: &'static str,
    labels: Vec<String>,
    chosen: Memo<Option<usize>>,
    on_pick: Callback<usize>,
) -> AnyView {
    view! {
        <fieldset class="choice">
            <legend>{label}</legend>
            <div class="choice-row">
                {labels
                    .into_iter()
                    .enumerate()
                    .map(|(place, words)| {
                        let id = format!("{name}-{place}");
                        view! {
                            <span class="choice-option">
                                <input
                                    type="radio"
                                    id=id.clone()
                                    name=name
                                    prop:checked=move || chosen.get() == Some(place)
                                    on:change=move |_| on_pick.run(place)
                                />
                                <label for=id>{words}</label>
                            </span>
                        }
                    })
                    .collect_view()}
            </div>
        </fieldset>
    }
    .into_any()
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
