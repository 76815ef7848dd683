//! Number of pieces since the last one known to be good.

use super::record::record_change;
use crate::components::Icon;
use crate::forms::Debounced;
use crate::i18n;
use crate::store::Store;
use lastpull_core::failure::FailureCard;
use lastpull_core::ids::Subject;
use leptos::prelude::*;

/// Numbers offered as buttons.
const QUICK: [u32; 5] = [1, 2, 5, 10, 20];

/// The stepper, and which sizes the pieces have.
#[component]
pub fn AffectedRange(id: Subject, card: Memo<Option<FailureCard>>) -> impl IntoView {
    let store = Store::from_context();
    let most = Memo::new(move |_| card.with(|card| card.as_ref().map_or(0, |card| card.most)));
    let recorded = Memo::new(move |_| card.with(|card| card.as_ref().and_then(|card| card.failure.since)));
    let sizes = Memo::new(move |_| card.with(|card| card.as_ref().map(suspects_of).unwrap_or_default()));
    let debounced = Debounced::new(Callback::new(move |pieces: u32| {
        record_change(store, id, |form| form.since = pieces.to_string());
    }));
    let shown = Memo::new(move |_| debounced.shown.get().or_else(|| recorded.get()));
    let step = move |by: i32| {
        let from = shown.get_untracked().unwrap_or(0);
        debounced.set(from.saturating_add_signed(by).min(most.get_untracked()));
    };
    view! {
        <p class="quiet-line">{i18n::failure_since_hint()}</p>
        {move || if most.get() == 0 {
            view! { <p>{i18n::failure_since_nothing()}</p> }.into_any()
        } else {
            view! {
                <div class="failure-stepper">
                    <button type="button" class="button failure-plus" id="since-less" aria-label=i18n::failure_since_less() disabled=move || shown.get().unwrap_or(0) == 0 on:click=move |_| step(-1)><Icon name="minus"/></button>
                    <output id="since" aria-live="polite">{move || shown.get().map_or_else(|| "–".to_owned(), |pieces| pieces.to_string())}</output>
                    <button type="button" class="button failure-plus" id="since-more" aria-label=i18n::failure_since_more() disabled=move || shown.get() == Some(most.get()) on:click=move |_| step(1)><Icon name="plus"/></button>
                </div>
                <div class="failure-quick">
                    <button type="button" class="button" data-since="0" on:click=move |_| debounced.done(0)>{i18n::failure_since_none()}</button>
                    {QUICK.into_iter().filter(|pieces| *pieces < most.get()).map(|pieces| view! {
                        <button type="button" class="button" data-since=pieces on:click=move |_| debounced.done(pieces)>{pieces}</button>
                    }).collect_view()}
                    <button type="button" class="button" data-since="all" on:click=move |_| debounced.done(most.get_untracked())>{i18n::failure_since_all(most.get())}</button>
                </div>
            }.into_any()
        }}
        {move || (!sizes.with(String::is_empty)).then(|| view! { <p id="since-sizes">{sizes}</p> })}
    }
}

/// The suspect pieces by size, if pieces are counted by size.
fn suspects_of(card: &FailureCard) -> String {
    let by_size =
        |(size, pieces): (&Option<lastpull_core::job::Size>, &u32)| format!("{} × {pieces}", i18n::size(*size));
    card.failure.suspects.iter().map(by_size).collect::<Vec<_>>().join(" · ")
}

/// The recorded answer, as text; `None` if there is none.
pub fn in_words(card: &FailureCard) -> Option<String> {
    card.failure.since.map(|pieces| match pieces {
        0 => i18n::failure_since_no().to_owned(),
        pieces => i18n::failure_since_last(pieces),
    })
}
