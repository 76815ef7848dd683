//! Past batches and charges.

use super::dialog::Dialog;
use crate::components::{Icon, long_rows};
use crate::i18n;
use crate::store::Store;
use lastpull_core::screen::{BathView, ChargeRow, FinishedBatch, delete_batch};
use leptos::prelude::*;

/// The batches of this charge, latest first.
#[component]
pub fn Batches(bath: Memo<BathView>) -> impl IntoView {
    let store = Store::from_context();
    let line = move |batch: &FinishedBatch| {
        let id = batch.id;
        let when = i18n::moment(batch.at);
        let minutes = batch.minutes.map_or_else(
            || i18n::bath_no_time().to_owned(),
            |minutes| format!("{} {}", i18n::bath_time(minutes), i18n::bath_min_a_screen()),
        );
        let delete = move |_| {
            let step = store.shop.with_untracked(|shop| delete_batch(shop, id, store.operator().as_deref()));
            store.record_with_undo(step.facts, step.undo, i18n::bath_batch_deleted());
        };
        view! {
            <div class="stencil-row">
                <span class="row-words">
                    <strong>{minutes}</strong>
                    <span class="muted">{format!("{} · {when}", i18n::screens_n(u32::from(batch.count)))}</span>
                </span>
                <button type="button" class="icon-button" aria-label=i18n::bath_delete_batch(when.clone()) on:click=delete><Icon name="bin"/></button>
            </div>
        }.into_any()
    };
    view! {
        {move || bath.with(|bath| (!bath.done.is_empty()).then(|| view! {
            <details class="stencil-fold" id="batches">
                <summary>{i18n::bath_batches_title(bath.done.len())}</summary>
                {long_rows("batches", "stencil-list", bath.done.iter().rev().cloned().collect(), line)}
            </details>
        }))}
    }
}

/// The current charge and those before, latest first.
#[component]
pub fn Charges(bath: Memo<BathView>, asking: RwSignal<Option<Dialog>>) -> impl IntoView {
    let line = move |(row, now): &(ChargeRow, bool)| {
        let id = row.id;
        let what = if row.chemistry.is_empty() { i18n::bath_no_chemistry().to_owned() } else { row.chemistry.clone() };
        let mut parts = vec![i18n::bath_charged_on(i18n::moment(row.at))];
        parts.extend(row.by.clone());
        parts.push(i18n::screens_n(row.screens));
        if *now {
            parts.push(i18n::bath_this_charge().to_owned());
        }
        view! {
            <button type="button" class="stencil-row" on:click=move |_| asking.set(Some(Dialog::Charge(Some(id))))>
                <span class="row-words"><strong>{what}</strong><span class="muted">{parts.join(" · ")}</span></span>
                <Icon name="edit"/>
            </button>
        }
        .into_any()
    };
    view! {
        {move || bath.with(|bath| bath.charge.as_ref().map(|charge| view! {
            <details class="stencil-fold" id="charges">
                <summary>{i18n::bath_charges_title()}</summary>
                {long_rows("charges", "stencil-list", charges(charge, &bath.before), line)}
            </details>
        }))}
    }
}

/// The charges, each with whether it is the current one.
fn charges(charge: &ChargeRow, before: &[ChargeRow]) -> Vec<(ChargeRow, bool)> {
    let before = before.iter().map(|row| (row.clone(), false));
    std::iter::once((charge.clone(), true)).chain(before).collect()
}
