//! The step of the exposure guide that the shop aims at.

use crate::forms::{Bound, Field, FormSubmit, Kind, SaveBar};
use crate::i18n;
use crate::store::Store;
use lastpull_core::facts::Fact;
use lastpull_core::ids::SHOP;
use lastpull_core::screen::{StencilFact, check_goal};
use leptos::prelude::*;

/// The setting.
#[component]
pub fn StepGoal() -> impl IntoView {
    let store = Store::from_context();
    let goal = move || store.shop.with_untracked(|shop| shop.exposure_log.goal());
    let text = RwSignal::new(goal().to_string());
    let submit = FormSubmit::new(Box::new(move || {
        let fact = text.with(|text| check_goal(text))?;
        Ok(if fact == StencilFact::Goal(goal()) { Vec::new() } else { vec![(SHOP, Fact::Stencil(fact))] })
    }));
    let problems = submit.problems;
    let save = move |event: leptos::ev::SubmitEvent| {
        let before = goal();
        let saved = move || {
            let step = goal();
            let undo = (step != before).then_some((SHOP, Fact::Stencil(StencilFact::Goal(before))));
            store.notify_with_undo(i18n::equipment_goal_saved(step), undo.into_iter().collect());
        };
        submit.submit_then(store, &event, Box::new(saved));
    };
    view! {
        <section class="card">
            <h2>{i18n::equipment_goal_title()}</h2>
            <p class="quiet-line">{i18n::equipment_goal_text()}</p>
            <form on:submit=save novalidate=true>
                <Field label=i18n::equipment_goal() kind=Kind::Whole bound=Bound::of("goal", text) problems/>
                <SaveBar problems busy=submit.busy/>
            </form>
        </section>
    }
}
