//! The burn steps of a screen.

use crate::components::Icon;
use crate::i18n;
use lastpull_core::screen::StepRow;
use lastpull_core::time::Millis;
use leptos::prelude::*;

/// The steps, done and to do.
#[component]
pub fn Steps(steps: Vec<StepRow>) -> impl IntoView {
    let next = steps.iter().position(|step| !step.done);
    view! {
        <section class="screen-way">
            <h2>{i18n::screen_steps()}</h2>
            <ol>
                {steps.into_iter().enumerate().map(|(index, row)| {
                    let said = match (row.at, row.done) {
                        (Some(at), _) => i18n::by_whom(at, row.by),
                        (None, true) => String::new(),
                        (None, false) if row.left == Millis::ZERO => i18n::burn_over().to_owned(),
                        (None, false) => i18n::burn_takes(i18n::duration(row.left)),
                    };
                    let is_next = next == Some(index);
                    let state = if row.done { i18n::burn_step_done() } else { "" };
                    view! {
                        <li class:done=row.done class:next=is_next>
                            {if row.done { view! { <Icon name="check"/> }.into_any() } else { view! { <span class="screen-dot"></span> }.into_any() }}
                            <strong>{i18n::burn_step(row.step)}<span class="visually-hidden">" "{state}</span></strong>
                            <span class="muted">{said}</span>
                        </li>
                    }
                }).collect_view()}
            </ol>
        </section>
    }
}
