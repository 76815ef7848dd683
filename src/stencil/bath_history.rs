//! Batches and charges of the past.

use super::bath::Asking;
use crate::parts::Icon;
use crate::store::Store;
use crate::words;
use lastpull_core::screen::{BathView, ChargeRow, DoneBatch, forget_batch};
use leptos::prelude::*;

/// The batches of this charge, the latest first.
#[component]
pub fn Batches(bath: Memo<BathView>) -> impl IntoView {
    let store = Store::from_context();
    let line = move |batch: &DoneBatch| {
        let id = batch.id;
        let when = words::moment(batch.at);
        let minutes = batch.minutes.map_or_else(
            || words::bath_no_time().to_owned(),
            |minutes| format!("{} {}", words::bath_time(minutes), words::bath_min_a_screen()),
        );
        let delete = move |_| {
            let step = store.shop.with_untracked(|shop| forget_batch(shop, id, store.crew().as_deref()));
            store.record_all(step.facts);
            store.tell_with_undo(words::bath_batch_deleted(), step.undo);
        };
        view! {
            <li class="stencil-row">
                <span class="row-words">
                    <strong>{minutes}</strong>
                    <span class="muted">{format!("{} · {when}", words::screens_n(u32::from(batch.count)))}</span>
                </span>
                <button type="button" class="icon-button" aria-label=words::bath_delete_batch(when.clone()) on:click=delete><Icon name="bin"/></button>
            </li>
        }
    };
    view! {
        {move || bath.with(|bath| (!bath.done.is_empty()).then(|| view! {
            <details class="stencil-fold" id="batches">
                <summary>{words::bath_batches_title(bath.done.len())}</summary>
                <ul class="stencil-list">{bath.done.iter().rev().map(line).collect_view()}</ul>
            </details>
        }))}
    }
}

/// The charge that is in it and those before, the latest first.
#[component]
pub fn Charges(bath: Memo<BathView>, asking: RwSignal<Option<Asking>>) -> impl IntoView {
    let line = move |row: &ChargeRow, now: bool| {
        let id = row.id;
        let what = if row.chemistry.is_empty() { words::bath_no_chemistry().to_owned() } else { row.chemistry.clone() };
        let mut parts = vec![words::bath_charged_on(words::moment(row.at))];
        parts.extend(row.by.clone());
        parts.push(words::screens_n(row.screens));
        if now {
            parts.push(words::bath_this_charge().to_owned());
        }
        view! {
            <li>
                <button type="button" class="stencil-row" on:click=move |_| asking.set(Some(Asking::Charge(Some(id))))>
                    <span class="row-words"><strong>{what}</strong><span class="muted">{parts.join(" · ")}</span></span>
                    <Icon name="edit"/>
                </button>
            </li>
        }
    };
    view! {
        {move || bath.with(|bath| bath.charge.as_ref().map(|charge| view! {
            <details class="stencil-fold" id="charges">
                <summary>{words::bath_charges_title()}</summary>
                <ul class="stencil-list">
                    {line(charge, true)}
                    {bath.before.iter().map(|row| line(row, false)).collect_view()}
                </ul>
            </details>
        }))}
    }
}
