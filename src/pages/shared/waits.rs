//! What a run waits for before it can be printed.

use crate::components::Icon;
use crate::i18n;
use lastpull_core::plan::RailRun;
use leptos::prelude::*;

/// Which screens it waits for, and until when.
#[component]
pub fn Waits(run: RailRun) -> impl IntoView {
    run.waits_until.map(|until| {
        let text = i18n::waits_for_screens(run.waits_for.join(", "), i18n::moment(until));
        view! { <small class="badge tight waits"><Icon name="screens"/>{text}</small> }
    })
}
