//! The screen that replaces the failed one: its burn steps, and how long each takes.

use super::record::record;
use crate::components::Icon;
use crate::i18n;
use crate::pages::shared::{ExposureLinks, StepCautions};
use crate::platform::clock;
use crate::store::Store;
use lastpull_core::failure::{FailureCard, ReplacementView};
use lastpull_core::ids::Subject;
use lastpull_core::screen::{BurnStep, StepRow, step_done, undo_step_fact};
use lastpull_core::shop::Shop;
use lastpull_core::time::Millis;
use leptos::prelude::*;

/// The replacement screen, once it is chosen.
#[component]
pub fn ReplacementBurn(card: Memo<Option<FailureCard>>, choosing: RwSignal<bool>) -> impl IntoView {
    let replacement = Memo::new(move |_| card.with(|card| card.as_ref().and_then(|card| card.replacement.clone())));
    let rows =
        Memo::new(move |_| replacement.with(|found| found.as_ref().map(|found| found.steps.len()).unwrap_or_default()));
    // What is still to be done, for its cautions; and the screen while it is still to be exposed.
    let open = Memo::new(move |_| {
        let steps = |found: &ReplacementView| -> Vec<BurnStep> {
            found.steps.iter().filter(|row| !row.done).map(|row| row.step).collect()
        };
        replacement.with(|found| found.as_ref().map(steps).unwrap_or_default())
    });
    let exposed = Memo::new(move |_| {
        let waits = open.with(|open| open.contains(&BurnStep::Expose));
        replacement.with(|found| found.as_ref().filter(|_| waits).map(|found| found.screen))
    });
    let label = Memo::new(move |_| replacement.with(|found| found.as_ref().map(|found| found.label.clone())));
    move || {
        label.get().map(|label| {
            view! {
                <section class="failure-burning" id="burning">
                    <header>
                        <h3>{i18n::failure_burning(label)}</h3>
                        <button type="button" class="button quiet" id="burn-other" on:click=move |_| choosing.set(true)>{i18n::failure_burn_other()}</button>
                    </header>
                    {move || {
                        if replacement.with(|found| found.as_ref().is_some_and(|found| found.ready.is_none())) {
                            view! { <p class="failure-ready" role="status"><Icon name="check"/>{i18n::failure_ready()}</p> }
                        } else {
                            view! { <p class="quiet-line">{i18n::failure_tick_hint()}</p> }
                        }
                    }}
                    <ol class="failure-ticks">
                        {move || (0..rows.get()).map(|index| {
                            let row = Memo::new(move |_| replacement.with(|found| {
                                found.as_ref().and_then(|found| Some((found.screen, found.steps.get(index)?.clone())))
                            }));
                            view! { <Tick row/> }
                        }).collect_view()}
                    </ol>
                    {move || exposed.get().map(|id| view! { <ExposureLinks screens=vec![id]/> })}
                    {move || view! { <StepCautions steps=open.get()/> }}
                </section>
            }
        })
    }
}

/// A step with a button that marks it done or undoes that.
#[component]
fn Tick(row: Memo<Option<(Subject, StepRow)>>) -> impl IntoView {
    let store = Store::from_context();
    let is_done = move || row.with(|row| row.as_ref().is_some_and(|(_, row)| row.done));
    let tick = move |_| {
        let Some((screen, row)) = row.get_untracked() else { return };
        let by = store.operator();
        let undone = |shop: &Shop| Some(undo_step_fact(shop.screens.live(screen)?, row.step, clock::now().now));
        let fact = if row.done { store.shop.with_untracked(undone) } else { Some(step_done(row.step, by.as_deref())) };
        record(store, fact.into_iter().map(|fact| (screen, fact)).collect());
    };
    let name = row.with_untracked(|row| row.as_ref().map_or("", |(_, row)| i18n::failure_burn_step(row.step)));
    let step = row.with_untracked(|row| row.as_ref().map(|(_, row)| format!("{:?}", row.step)).unwrap_or_default());
    let beside = move || {
        row.with(|row| {
            row.as_ref().map(|(_, row)| match (row.done, row.at) {
                (true, at) => at.map(i18n::moment).unwrap_or_default(),
                (false, _) if row.left == Millis::ZERO => i18n::failure_step_any_moment().to_owned(),
                // Drying goes on by itself; a step by hand takes its time whenever it begins.
                (false, _) if matches!(row.step, BurnStep::Dry | BurnStep::WashDry) => {
                    i18n::pace_left(i18n::duration(row.left))
                }
                (false, _) => i18n::burn_takes(i18n::duration(row.left)),
            })
        })
    };
    view! {
        <li>
            <button type="button" class="failure-tick" data-step=step aria-pressed=move || is_done().to_string() on:click=tick>
                <span class="failure-box" aria-hidden="true">{move || is_done().then(|| view! { <Icon name="check"/> })}</span>
                <span>{name}</span>
                <small>{beside}</small>
            </button>
        </li>
    }
}
