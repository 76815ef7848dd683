//! Summary of a failure, always visible: downtime, and the run's pieces that are good, suspect and spoiled.

use crate::i18n;
use crate::store::Store;
use lastpull_core::failure::FailureCard;
use leptos::prelude::*;

/// Downtime and numbers of pieces.
#[component]
pub fn SummaryBar(card: Memo<Option<FailureCard>>) -> impl IntoView {
    let store = Store::from_context();
    let heaps = Memo::new(move |_| card.with(|card| card.as_ref().map(|card| card.pieces).unwrap_or_default()));
    let stands = Memo::new(move |_| {
        card.with(|card| {
            card.as_ref().map(|card| (card.is_stopped, card.failure.at, card.row.downtime)).unwrap_or_default()
        })
    });
    // The card is updated once a second; while the press is stopped the downtime runs on.
    let time = move || match stands.get() {
        (true, at, _) => i18n::stopwatch(store.clock.get().now.since(at)),
        (false, _, stood) => i18n::stopwatch(stood),
    };
    view! {
        <div class="failure-strip" class:stands=move || stands.get().0>
            <p class="failure-time">
                <span>{move || if stands.get().0 { i18n::failure_stands() } else { i18n::failure_stood() }}</span>
                <strong id="downtime" role="timer">{time}</strong>
            </p>
            <dl class="failure-heaps" aria-label=i18n::failure_heaps()>
                <div><dt>{i18n::failure_good()}</dt><dd id="heap-good">{move || heaps.get().good}</dd></div>
                <div class:some=move || { heaps.get().suspect > 0 }><dt>{i18n::failure_suspect()}</dt><dd id="heap-suspect">{move || heaps.get().suspect}</dd></div>
                <div><dt>{i18n::failure_spoiled()}</dt><dd id="heap-spoiled">{move || heaps.get().spoiled}</dd></div>
            </dl>
        </div>
    }
}
