//! What the failure does to the run and to the day, as things stand.

use crate::day::Verdict;
use crate::words;
use lastpull_core::failure::FailureCard;
use lastpull_core::plan::RailVerdict;
use leptos::prelude::*;

/// When it pulls again, when the run is out, whether that makes closing, and what becomes of the day.
#[component]
pub fn Finish(card: Memo<Option<FailureCard>>) -> impl IntoView {
    let run = Memo::new(move |_| {
        let card = card.get()?;
        let pulls = card.replacement.as_ref().and_then(|replacement| replacement.pulls);
        card.on_press.then_some((card.finish?, pulls, card.stands))
    });
    let day = Memo::new(move |_| card.with(|card| card.as_ref().and_then(|card| card.day)));
    view! {
        <section class="failure-finish" id="new-finish">
            {move || run.get().map(|(new, pulls, stands)| {
                let [expected, early, late] = new.finish;
                let lead = match (pulls, stands) {
                    (Some(_), _) => words::failure_with_screen(),
                    (None, true) => words::failure_if_now(),
                    (None, false) => words::failure_as_it_runs(),
                };
                view! {
                    {pulls.map(|at| view! { <p class="failure-pulls" id="pulls-again">{words::failure_pulls_again(words::time(at))}</p> })}
                    <p class="pace-lead">
                        <span>{lead}</span>
                        <strong id="failure-out">{words::out_at(words::time(expected))}</strong>
                        <small>{words::from_to(words::time(early), words::time(late))}</small>
                        {new.chance.map(|chance| view! { <span class=format!("badge {}", crate::press::chance_tone(chance))>{words::chance(chance)}</span> })}
                    </p>
                }
            })}
            {move || day.get().filter(|day| *day != RailVerdict::Empty).map(|verdict| view! { <Verdict verdict/> })}
        </section>
    }
}
