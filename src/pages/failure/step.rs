//! The steps of recording a failure, in the order of the emergency. One is open at a time; the answered ones
//! are shown as one line each, which opens again.

use crate::components::Icon;
use crate::i18n;
use crate::platform::{clock, dom};
use lastpull_core::failure::FailureCard;
use leptos::prelude::*;
use std::time::Duration;

/// A step.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Step {
    /// What failed, and on which screen.
    Kind,
    /// Photos of it.
    Photos,
    /// Where on the print.
    Mark,
    /// Number of pieces since the last good one.
    Since,
    /// The remedy.
    Remedy,
}

impl Step {
    const ALL: [Self; 5] = [Self::Kind, Self::Photos, Self::Mark, Self::Since, Self::Remedy];

    fn name(self) -> &'static str {
        match self {
            Self::Kind => "step-kind",
            Self::Photos => "step-photos",
            Self::Mark => "step-mark",
            Self::Since => "step-since",
            Self::Remedy => "step-remedy",
        }
    }

    fn is_answered(self, card: &FailureCard) -> bool {
        match self {
            Self::Kind => card.failure.kind.is_some(),
            Self::Photos => card.photos > 0,
            Self::Mark => card.failure.mark.is_some(),
            Self::Since => card.failure.since.is_some(),
            Self::Remedy => card.failure.remedy.is_some(),
        }
    }

    /// The first step without an answer, while the press is stopped.
    pub fn first(card: &FailureCard) -> Option<Self> {
        Self::ALL.into_iter().find(|step| card.is_stopped && !step.is_answered(card))
    }

    /// Opens the next step without an answer; none if all are answered.
    pub fn leave(self, card: Option<&FailureCard>, current: RwSignal<Option<Self>>) {
        let next = card.and_then(|card| Self::ALL.into_iter().find(|step| *step > self && !step.is_answered(card)));
        current.set(next);
        let at = next.map_or("failure-foot", Self::name);
        clock::after(Duration::ZERO, move || {
            dom::scroll_to(at);
            dom::focus(at);
        });
    }
}

/// A step as a line that opens. `answer` is shown under its title; `None` without one.
#[component]
pub fn StepRow(
    step: Step,
    title: &'static str,
    #[prop(into)] answer: Signal<Option<String>>,
    current: RwSignal<Option<Step>>,
    #[prop(into)] body: ViewFn,
) -> impl IntoView {
    let is_open = move || current.get() == Some(step);
    let toggle = move |_| current.update(|current| *current = (*current != Some(step)).then_some(step));
    let number = Step::ALL.iter().position(|other| *other == step).unwrap_or(0) + 1;
    view! {
        <li class="failure-step" class:open=is_open class:answered=move || answer.with(Option::is_some)>
            <h2>
                <button type="button" class="failure-step-head" id=step.name() aria-expanded=move || is_open().to_string() on:click=toggle>
                    <span class="failure-step-mark" aria-hidden="true">
                        {move || if answer.with(Option::is_some) { view! { <Icon name="check"/> }.into_any() } else { view! { <span>{number}</span> }.into_any() }}
                    </span>
                    <span class="row-words">
                        <span>{title}</span>
                        <small>{move || answer.get().unwrap_or_else(|| i18n::failure_not_recorded().to_owned())}</small>
                    </span>
                </button>
            </h2>
            {move || is_open().then(|| view! { <div class="failure-step-body">{body.run()}</div> })}
        </li>
    }
}

/// The button at the end of a step that opens the next one.
#[component]
pub fn Next(#[prop(into)] on_next: Callback<()>) -> impl IntoView {
    view! {
        <button type="button" class="button failure-next" on:click=move |_| on_next.run(())>{i18n::failure_next()}<Icon name="down"/></button>
    }
}
