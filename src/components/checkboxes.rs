//! A group of checkboxes.

use super::icon::Icon;
use crate::platform::dom;
use leptos::prelude::*;
use uuid::Uuid;

/// A group of checkboxes, each with a label and a secondary text.
#[component]
pub fn Checkboxes(
    /// Label of the group.
    #[prop(into)]
    label: String,
    /// Prefix of the checkboxes' ids, unique on the page.
    name: &'static str,
    /// Id, label and secondary text of each option.
    options: Vec<(Uuid, String, String)>,
    /// Ids of the ticked options.
    ticked: Signal<Vec<Uuid>>,
    /// Called with an option's id and its new state.
    on_tick: Callback<(Uuid, bool)>,
) -> impl IntoView {
    view! {
        <fieldset class="choice stencil-ticks">
            <legend>{label}</legend>
            <div class="choice-row">
                {options.into_iter().enumerate().map(|(index, (id, words, small))| {
                    let element = format!("{name}-{index}");
                    view! {
                        <span class="choice-option">
                            <input
                                type="checkbox"
                                id=element.clone()
                                prop:checked=move || ticked.with(|ticked| ticked.contains(&id))
                                on:change=move |event| on_tick.run((id, dom::checked(&event)))
                            />
                            <label for=element><Icon name="check"/><strong>{words}</strong><small>{small}</small></label>
                        </span>
                    }
                }).collect_view()}
            </div>
        </fieldset>
    }
}
