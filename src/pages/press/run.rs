//! One run, from its checks to its summary.
//!
//! Only the count is in the first load; what comes before and after it is in a chunk.

use super::checks::{Checks, ChecksDone};
use super::count::Count;
use super::heading::heading_of;
use super::summary::FinishedRun;
use crate::components::NotHere;
use crate::lazy;
use crate::route::Route;
use crate::store::Store;
use lastpull_core::ids::RunId;
use lastpull_core::run::{CountView, RunPhase, UnsavedFact, count_view};
use leptos::prelude::*;

/// One run: checks before it starts, the count while it is on the press, the summary after.
#[component]
pub fn RunPage(id: RunId) -> impl IntoView {
    let store = Store::from_context();
    let heading = Memo::new(move |_| store.shop.with(|shop| heading_of(shop, id)));
    let count = count_of(store, id);
    let standing = Memo::new(move |_| count.with(CountView::page_phase));
    move || match heading.get() {
        None => view! { <NotHere/> }.into_any(),
        Some(heading) => match standing.get() {
            RunPhase::Waiting | RunPhase::Ended => lazy::draw(Route::Run(id)),
            RunPhase::Running | RunPhase::Stopped { .. } => view! { <Count id heading count/> }.into_any(),
        },
    }
}

/// The count, including facts that are not saved yet.
fn count_of(store: Store, id: RunId) -> Memo<CountView> {
    Memo::new(move |_| {
        let pending: Vec<UnsavedFact> =
            store.pending.with(|pending| pending.iter().map(crate::store::PendingFact::to_pending).collect());
        store.shop.with(|shop| count_view(shop, id, store.device.get(), store.clock.get(), &pending))
    })
}

/// The part of a run's page that is in the chunk: checks before the count, their results during it, the summary after.
#[component]
pub fn RunBesideCount(id: RunId) -> impl IntoView {
    let store = Store::from_context();
    let heading = Memo::new(move |_| store.shop.with(|shop| heading_of(shop, id)));
    let count = count_of(store, id);
    let standing = Memo::new(move |_| count.with(CountView::page_phase));
    move || match (heading.get(), standing.get()) {
        (None, _) => view! { <NotHere/> }.into_any(),
        (Some(heading), RunPhase::Waiting) => view! { <Checks id heading/> }.into_any(),
        (Some(heading), RunPhase::Ended) => view! { <FinishedRun id heading/> }.into_any(),
        (Some(_), _) => view! { <ChecksDone id/> }.into_any(),
    }
}
