//! A row that expands.

use crate::components::Icon;
use leptos::prelude::*;

/// A row that expands: `line` is always visible, `within` when expanded.
pub fn folding_row(tone: &'static str, icon: &'static str, id: &'static str, line: String, within: AnyView) -> AnyView {
    view! {
        <details class=format!("heat-row {tone}") id=id>
            <summary><Icon name=icon/><span>{line}</span></summary>
            <div class="heat-row-body">{within}</div>
        </details>
    }
    .into_any()
}
