//! The schedule: runs on a line from now to closing, reordered by dragging or with buttons.

use super::closing::Closing;
use super::run_block::{DraggedRun, RunBlock};
use crate::components::drag::PointerDrag;
use crate::i18n::{self, Term};
use crate::pages::help::LazyHelp;
use crate::store::Store;
use lastpull_core::ids::{RunId, SHOP};
use lastpull_core::plan::{Rail as RailState, RunFit, order_fact, reordered};
use lastpull_core::time::Millis;
use leptos::prelude::*;
use wasm_bindgen::JsCast;

/// The schedule.
#[component]
pub fn Rail(state: Memo<RailState>) -> impl IntoView {
    let store = Store::from_context();
    let drag = PointerDrag::new();
    let ids = Memo::new(move |_| state.with(|rail| rail.runs.iter().map(|run| run.id).collect::<Vec<_>>()));
    // The closing line is above the first run that is not expected to finish before closing.
    let past = Memo::new(move |_| {
        state.with(|rail| {
            let past = |fit: RunFit| matches!(fit, RunFit::MissesClosing | RunFit::Later);
            rail.runs
                .iter()
                .find(|run| past(run.fit) || run.finish.zip(rail.closing).is_some_and(|(f, c)| f.expected > c))
                .map(|run| run.id)
        })
    });
    let place = Callback::new(move |(id, place): (RunId, usize)| {
        let order = store.shop.with_untracked(|shop| reordered(shop, id, place));
        let shown = ids.get_untracked();
        if let Some(order) = order.filter(|order| *order != shown) {
            let title =
                state.with_untracked(|rail| rail.runs.iter().find(|run| run.id == id).map(|run| run.title.clone()));
            let before = store.shop.with_untracked(|shop| shop.order().to_vec());
            let text =
                i18n::moved(title.unwrap_or_default(), order.iter().position(|run| *run == id).unwrap_or(place) + 1);
            store.record_with_undo(vec![(SHOP, order_fact(&order))], vec![(SHOP, order_fact(&before))], text);
        }
    });
    let drop_at = move |id: RunId, y: f64| place_under(&ids.get_untracked(), id, y);
    let set_up = move || {
        state.with(|rail| {
            let time = i18n::duration(Millis::from_seconds(rail.set_up));
            if rail.set_up_learned { i18n::set_up_between_learned(time) } else { i18n::set_up_between(time) }
        })
    };
    view! {
        <section class="rail" aria-label=i18n::rail_label()>
            <div class="help-row rail-now">
                <p>{move || i18n::rail_now(i18n::time(store.clock.get().now))}</p>
                // Above the badges of the runs, which say it.
                <LazyHelp term=Term::Forecast name=i18n::help_forecast()/>
            </div>
            <ol class="rail-runs">
                <For each=move || ids.get() key=|id| *id let:id>
                    <li
                        id=format!("rail-{id}")
                        class:dragged=move || drag.get().is_some_and(|drag: DraggedRun| drag.run == id)
                        style:transform=move || {
                            drag.get().filter(|drag| drag.run == id).map(|drag| format!("translateY({}px)", drag.by))
                        }
                    >
                        {move || (past.get() == Some(id)).then(|| view! { <Closing/> })}
                        <RunBlock id state drag place drop_at=Callback::new(move |y| drop_at(id, y))/>
                    </li>
                </For>
            </ol>
            {move || past.get().is_none().then(|| view! { <Closing/> })}
            {move || (!ids.with(Vec::is_empty)).then(|| view! { <p class="quiet-line">{set_up()}</p> })}
        </section>
    }
}

/// Index to which a run dragged to the window height `y` (pixels) moves; `None` if it keeps its place.
fn place_under(ids: &[RunId], dragged: RunId, y: f64) -> Option<usize> {
    let middle = |id: &RunId| {
        let row = document().get_element_by_id(&format!("rail-{id}"))?.dyn_into::<web_sys::Element>().ok()?;
        let rect = row.get_bounding_client_rect();
        Some(f64::midpoint(rect.top(), rect.bottom()))
    };
    let from = ids.iter().position(|id| *id == dragged)?;
    let place = ids.iter().filter(|id| **id != dragged).filter_map(middle).filter(|middle| *middle < y).count();
    (place != from).then_some(place)
}
