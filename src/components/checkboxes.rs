//! Some of several, each ticked by a touch.

use super::icon::Icon;
use crate::platform::dom;
use leptos::prelude::*;
use uuid::Uuid;

/// Things to tick: what each is called, and the words small beside it.
#[component]
pub fn Checkboxes(
    /// What is asked.
    #[prop(into)]
    label: String,
    /// A name for the group, unique on the screen.
    name: &'static str,
    /// What there is.
    options: Vec<(Uuid, String, String)>,
    /// Which are ticked.
    ticked: Signal<Vec<Uuid>>,
    /// Called with one and whether it is ticked now.
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
