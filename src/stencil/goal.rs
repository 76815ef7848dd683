//! The step of the guide that the shop aims at.

use crate::kept::RwSignal;
use crate::live::Drawn;
use crate::parts::{Field, Kind, SaveBar, bound};
use crate::platform::spawn_local;
use crate::store::Store;
use crate::words;
use lastpull_core::job::Problems;
use lastpull_core::journal::Fact;
use lastpull_core::screen::{StencilFact, check_goal};
use lastpull_view::view;
use leptos::prelude::*;
use uuid::Uuid;

/// The setting.
#[component(transparent)]
pub fn Goal() -> Drawn {
    let store = Store::from_context();
    let before = store.shop.with_untracked(|shop| shop.stencils.goal());
    let text = RwSignal::new(before.to_string());
    let problems = RwSignal::new(Problems::new());
    let busy = RwSignal::new(false);
    let save = move |event: leptos::ev::SubmitEvent| {
        event.prevent_default();
        match text.with_untracked(|text| check_goal(text)) {
            Err(found) => problems.set(found),
            Ok(fact) => {
                problems.set(Problems::new());
                let before = store.shop.with_untracked(|shop| shop.stencils.goal());
                let StencilFact::Goal(step) = fact else { return };
                if step == before {
                    return store.tell(words::kit_goal_saved(step));
                }
                busy.set(true);
                spawn_local(async move {
                    let saved = store.record_and_wait(vec![(Uuid::nil(), Fact::Stencil(fact))]).await;
                    busy.set(false);
                    if saved {
                        let undo = Fact::Stencil(StencilFact::Goal(before));
                        store.tell_with_undo(words::kit_goal_saved(step), vec![(Uuid::nil(), undo)]);
                    }
                });
            }
        }
    };
    view! {
        <section class="card">
            <h2>{words::kit_goal_title()}</h2>
            <p class="quiet-line">{words::kit_goal_text()}</p>
            <form on:submit=save novalidate=true>
                <Field name="goal" label=words::kit_goal() kind=Kind::Whole bound=bound(text, |text| text) problems/>
                <SaveBar problems busy/>
            </form>
        </section>
    }
}
