//! A pot's ledger: every line, with undo.

use super::ledger_text::{event_text, signed_weight, undo_event};
use crate::components::Icon;
use crate::i18n;
use crate::route::{PotRoute, Route};
use crate::store::Store;
use lastpull_core::ids::Subject;
use lastpull_core::ink::{LedgerKind, LedgerLine, PotCard, PourStep};
use lastpull_core::units::Grams;
use leptos::prelude::*;

/// The last addition, with its photo, its reading and undo.
#[component]
pub fn LastLine(id: Subject, card: Memo<Option<PotCard>>) -> impl IntoView {
    let store = Store::from_context();
    let last = Memo::new(move |_| {
        card.with(|card| {
            card.as_ref()?.ledger.iter().rfind(|line| !line.deleted).filter(|line| is_correction(line)).cloned()
        })
    });
    move || {
        last.get().map(|line| view! {
        <section class="pot-last" id="last">
            <p><strong>{signed_weight(&line, super::ledger_text::scale_step(store))}" "{event_text(&line, Grams::ZERO)}</strong>{(!line.note.is_empty()).then(|| view! { <span>{line.note.clone()}</span> })}</p>
            <a class="button with-icon" href=Route::Pot(PotRoute::Event(id, line.event)).hash()><Icon name="camera"/>{i18n::pot_photo_reading()}</a>
            <button type="button" class="button with-icon" id="undo-last" on:click=move |_| undo_event(store, line.event, false)><Icon name="undo"/>{i18n::undo()}</button>
        </section>
    })
    }
}

fn is_correction(line: &LedgerLine) -> bool {
    matches!(line.what, LedgerKind::Poured { step: PourStep::Correction, .. })
}

/// The lines, latest first.
#[component]
pub fn Ledger(id: Subject, card: Memo<Option<PotCard>>) -> impl IntoView {
    let store = Store::from_context();
    let lines = Memo::new(move |_| card.with(|card| card.as_ref().map(|card| card.ledger.clone()).unwrap_or_default()));
    let wasted =
        Memo::new(move |_| card.with(|card| card.as_ref().map(|card| (card.used, card.wasted)).unwrap_or_default()));
    let step = Memo::new(move |_| super::ledger_text::scale_step(store));
    view! {
        <details class="pot-fold" id="history">
            <summary>{move || i18n::pot_history(lines.with(Vec::len) as u32)}</summary>
            <p class="quiet-line">{move || {
                let (used, wasted) = wasted.get();
                let grams = |grams| i18n::pot_weight(grams, step.get());
                i18n::pot_used_wasted(grams(used), grams(wasted))
            }}</p>
            <ol class="pot-ledger">
                {move || lines.with(|lines| lines.iter().rev().map(|line| drawn(store, id, line, step.get())).collect::<Vec<_>>())}
            </ol>
        </details>
    }
}

fn drawn(store: Store, pot: Subject, line: &LedgerLine, step: Grams) -> AnyView {
    let (event, deleted) = (line.event, line.deleted);
    let what = event_text(line, step);
    let (icon, do_it) = if deleted { ("repeat", i18n::pot_record_again()) } else { ("undo", i18n::pot_take_back()) };
    let photos = (line.photos > 0).then(|| i18n::photos_n(line.photos));
    let read = line.reading.is_some().then(|| i18n::pot_with_reading().to_owned());
    let by = [Some(i18n::moment(line.at)), line.by.clone(), photos, read]
        .into_iter()
        .flatten()
        .collect::<Vec<_>>()
        .join(" · ");
    view! {
        <li class:deleted=deleted>
            <a class="pot-line" href=Route::Pot(PotRoute::Event(pot, event)).hash()>
                <span class="row-words">
                    <strong>{what.clone()}</strong>
                    {(!line.note.is_empty()).then(|| view! { <span>{line.note.clone()}</span> })}
                    <small class="muted">{by}</small>
                    {deleted.then(|| view! { <small class="muted">{i18n::pot_was_taken_back()}</small> })}
                </span>
                <span class="pot-line-grams">{signed_weight(line, step).map(|grams| view! { <strong>{grams}</strong> })}<small>{i18n::pot_then_held(i18n::pot_weight(line.total, step))}</small></span>
            </a>
            <button type="button" class="icon-button" aria-label=format!("{do_it}: {what}") on:click=move |_| undo_event(store, event, deleted)><Icon name=icon/></button>
        </li>
    }.into_any()
}
