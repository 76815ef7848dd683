//! Cautions for steps of burning a screen.

use crate::components::Icon;
use crate::i18n;
use lastpull_core::screen::BurnStep;
use leptos::prelude::*;

/// The cautions for these steps. Renders nothing if there are none.
#[component]
pub fn StepCautions(steps: Vec<BurnStep>) -> impl IntoView {
    i18n::step_cautions(&steps)
        .into_iter()
        .map(|line| view! { <p class="caution"><Icon name="alert"/>{line}</p> })
        .collect_view()
}
