//! Whether a run is in time for closing or its due time.

use crate::i18n;
use lastpull_core::run::{Goal, Likelihood};
use leptos::prelude::*;

/// Whether a run is in time, as a badge.
#[component]
pub fn GoalBadge(goal: Goal) -> impl IntoView {
    let tone = match goal.chance.likelihood {
        _ if goal.is_past => "bad",
        Likelihood::Sure => "good",
        Likelihood::Likely | Likelihood::Even | Likelihood::Unlikely => "tight",
        Likelihood::No => "bad",
    };
    view! { <span class=format!("badge goal {tone}")>{i18n::in_time(&goal)}</span> }
}
