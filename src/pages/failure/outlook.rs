//! The expected effect of the failure on the run and the day.

use crate::i18n;
use crate::pages::shared::{GoalBadge, Verdict, out_at};
use lastpull_core::failure::FailureCard;
use lastpull_core::plan::RailVerdict;
use lastpull_core::time::Estimate;
use leptos::prelude::*;

/// When the press prints again, when the run is finished, whether before closing, and what that does to the day.
#[component]
pub fn Outlook(card: Memo<Option<FailureCard>>) -> impl IntoView {
    let run = Memo::new(move |_| {
        let card = card.get()?;
        let pulls = card.replacement.as_ref().and_then(|replacement| replacement.pulls_at);
        card.on_press.then_some((card.finish?, pulls, card.is_stopped))
    });
    let day = Memo::new(move |_| card.with(|card| card.as_ref().and_then(|card| card.day)));
    view! {
        <section class="failure-finish" id="new-finish">
            {move || run.get().map(|(new, pulls, stands)| {
                let Estimate { expected, low: early, high: late } = new.finish;
                let lead = match (pulls, stands) {
                    (Some(_), _) => i18n::failure_with_screen(),
                    (None, true) => i18n::failure_if_now(),
                    (None, false) => i18n::failure_as_it_runs(),
                };
                view! {
                    {pulls.map(|at| view! { <p class="failure-pulls" id="pulls-again">{i18n::failure_pulls_again(i18n::moment(at))}</p> })}
                    <p class="pace-lead">
                        <span>{lead}</span>
                        <strong id="failure-out">{out_at(i18n::moment(expected), new.ends_at_press)}</strong>
                        <small>{i18n::likely_between(i18n::between(early, late))}</small>
                        {new.goal.map(|goal| view! { <GoalBadge goal/> })}
                    </p>
                }
            })}
            {move || day.get().filter(|day| *day != RailVerdict::Empty).map(|verdict| view! { <Verdict verdict/> })}
        </section>
    }
}
