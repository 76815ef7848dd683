//! A garment lot on the job's card, with its runs.

use crate::failure::FailureBar;
use crate::parts::{GarmentChip, Icon, Swatch};
use crate::place::Place;
use crate::store::Store;
use crate::words;
use lastpull_core::ink::Colour;
use lastpull_core::job::{LotCard, RunCard};
use lastpull_core::journal::Fact;
use lastpull_core::run::{SetUp, Standing};
use leptos::prelude::*;

/// A lot with its sizes and runs.
#[component]
pub fn LotSection(lot: LotCard) -> impl IntoView {
    let store = Store::from_context();
    let LotCard { id, lot, runs } = lot;
    let garment = StoredValue::new(lot.garment.clone());
    let total = lot.total();
    let delete = move |_| {
        store.record(id, Fact::Deleted);
        store.tell_with_undo(words::lot_deleted(garment.get_value()), vec![(id, Fact::Restored)]);
    };
    view! {
        <section class="lot">
            <header class="lot-head">
                <Swatch colour=lot.colour/>
                <div>
                    <h3>{lot.garment.clone()}</h3>
                    <p class="muted">{words::fabric(lot.fabric)}{(!lot.colour_name.is_empty()).then(|| format!(" · {}", lot.colour_name))}</p>
                </div>
                <a class="icon-button" href=Place::EditLot(id).hash() aria-label=format!("{}: {}", words::edit(), lot.garment)><Icon name="edit"/></a>
                <button type="button" class="icon-button" aria-label=format!("{}: {}", words::delete(), lot.garment) on:click=delete><Icon name="bin"/></button>
            </header>
            <ul class="size-row">
                {lot.pieces.iter().map(|(size, pieces)| view! { <li><span>{words::size(Some(*size))}</span><strong>{*pieces}</strong></li> }).collect_view()}
                <li class="total"><span>{words::lot_total(words::pieces(total))}</span></li>
            </ul>
            {lot.fabric.fears_heat().then(|| view! { <p class="caution"><Icon name="heat"/>{words::lot_fabric_caution()}</p> })}
            {runs.is_empty().then(|| view! { <p class="quiet-line">{words::run_none()}</p> })}
            <ul class="run-rows">
                {runs.into_iter().map(|run| view! { <RunRow run total garment=lot.colour/> }).collect_view()}
            </ul>
            <a class="button with-icon" href=Place::NewRun(id).hash()><Icon name="plus"/>{words::run_add()}</a>
        </section>
    }
}

#[component]
fn RunRow(run: RunCard, total: u32, garment: Option<Colour>) -> impl IntoView {
    let store = Store::from_context();
    let id = run.id;
    let place = words::location(run.run.location);
    let (badge, tone) = match run.standing {
        Standing::Waiting => (words::run_waiting(), ""),
        Standing::Running => (words::on_press(), "press"),
        Standing::Stopped { .. } => (words::run_stopped(), "tight"),
        Standing::Ended => (words::run_done(), "good"),
    };
    let delete = move |_| {
        store.record(id, Fact::Deleted);
        store.tell_with_undo(words::run_deleted(place), vec![(id, Fact::Restored)]);
    };
    view! {
        <li class="run-row">
            <a class="run-row-link" href=Place::Run(id).hash()>
                <GarmentChip garment ink=run.run.ink_colour/>
                <span class="row-words">
                    <strong>{place}" · "{run.run.ink.clone()}</strong>
                    <span class="muted">{set_up_line(&run.run.set_up)}</span>
                </span>
                <span class="row-count">
                    {words::of_pieces(run.good, total)}
                    <span class=format!("badge {tone}")>{badge}</span>
                    {(run.misprints > 0).then(|| view! { <span class="badge bad">{words::misprints_n(run.misprints)}</span> })}
                </span>
            </a>
            <a class="icon-button" href=Place::EditRun(id).hash() aria-label=format!("{}: {place}", words::edit())><Icon name="edit"/></a>
            <button type="button" class="icon-button" aria-label=format!("{}: {place}", words::delete()) on:click=delete><Icon name="bin"/></button>
            {run.failures.into_iter().map(|notice| view! { <FailureBar notice/> }).collect_view()}
        </li>
    }
}

/// The set-up in a line.
fn set_up_line(set_up: &SetUp) -> String {
    let mut parts = vec![words::hits_n(u32::from(set_up.hits))];
    parts.push(
        set_up
            .flash
            .map_or_else(|| words::no_flash().to_owned(), |flash| words::flash_for(words::seconds(flash.seconds))),
    );
    parts.extend(set_up.mesh.map(words::mesh));
    parts.extend(set_up.dryer.map(words::temperature));
    parts.extend(set_up.dwell.map(words::seconds));
    parts.join(" · ")
}
