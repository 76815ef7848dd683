//! A garment lot on the job's page, with its runs.

use crate::components::{GarmentChip, Icon, Swatch};
use crate::i18n;
use crate::pages::shared::FailureBar;
use crate::route::{JobsRoute, Route};
use crate::store::Store;
use lastpull_core::colour::Colour;
use lastpull_core::job::{LotCard, RunCard};
use lastpull_core::run::{RunPhase, SetUp};
use leptos::prelude::*;

/// A lot with its sizes and runs.
#[component]
pub fn LotSection(lot: LotCard) -> impl IntoView {
    let store = Store::from_context();
    let LotCard { id, lot, runs } = lot;
    let garment = StoredValue::new(lot.garment.clone());
    let total = lot.total();
    let delete = move |_| {
        store.delete_with_undo(id, i18n::lot_deleted(garment.get_value()));
    };
    view! {
        <section class="lot">
            <header class="lot-head">
                <Swatch colour=lot.colour/>
                <div>
                    <h3>{lot.garment.clone()}</h3>
                    <p class="muted">{i18n::fabric(lot.fabric)}{(!lot.colour_name.is_empty()).then(|| format!(" · {}", lot.colour_name))}</p>
                </div>
                <a class="icon-button" href=JobsRoute::EditLot(id).hash() aria-label=format!("{}: {}", i18n::edit(), lot.garment)><Icon name="edit"/></a>
                <button type="button" class="icon-button" aria-label=format!("{}: {}", i18n::delete(), lot.garment) on:click=delete><Icon name="bin"/></button>
            </header>
            <ul class="size-row">
                {lot.pieces.iter().map(|(size, pieces)| view! { <li><span>{i18n::size(Some(*size))}</span><strong>{*pieces}</strong></li> }).collect_view()}
                <li class="total"><span>{i18n::lot_total(i18n::pieces(total))}</span></li>
            </ul>
            {lot.fabric.is_heat_sensitive().then(|| view! { <p class="caution"><Icon name="heat"/>{i18n::lot_fabric_caution()}</p> })}
            {runs.is_empty().then(|| view! { <p class="quiet-line">{i18n::run_none()}</p> })}
            <ul class="run-rows">
                {runs.into_iter().map(|run| view! { <RunRow run total garment=lot.colour/> }).collect_view()}
            </ul>
            <a class="button with-icon" href=JobsRoute::NewRun(id).hash()><Icon name="plus"/>{i18n::run_add()}</a>
        </section>
    }
}

#[component]
fn RunRow(run: RunCard, total: u32, garment: Option<Colour>) -> impl IntoView {
    let store = Store::from_context();
    let id = run.id;
    let place = i18n::location(run.run.location);
    let (badge, tone) = match run.phase {
        RunPhase::Waiting => (i18n::run_waiting(), ""),
        RunPhase::Running => (i18n::on_press(), "press"),
        RunPhase::Stopped { .. } => (i18n::run_stopped(), "tight"),
        RunPhase::Ended => (i18n::run_done(), "good"),
    };
    let delete = move |_| {
        store.delete_with_undo(id, i18n::run_deleted(place));
    };
    view! {
        <li class="run-row">
            <a class="run-row-link" href=Route::Run(id).hash()>
                <GarmentChip garment ink=run.run.ink_colour/>
                <span class="row-words">
                    <strong>{place}" · "{run.run.ink.clone()}</strong>
                    <span class="muted">{set_up_line(&run.run.set_up)}</span>
                </span>
                <span class="row-count">
                    {i18n::of_pieces(run.good, total)}
                    <span class=format!("badge {tone}")>{badge}</span>
                    {(run.over > 0).then(|| view! { <span class="badge tight">{i18n::count_over(run.over)}</span> })}
                    {(run.misprints > 0).then(|| view! { <span class="badge bad">{i18n::misprints_n(run.misprints)}</span> })}
                </span>
            </a>
            <a class="icon-button" href=JobsRoute::EditRun(id).hash() aria-label=format!("{}: {place}", i18n::edit())><Icon name="edit"/></a>
            <button type="button" class="icon-button" aria-label=format!("{}: {place}", i18n::delete()) on:click=delete><Icon name="bin"/></button>
            {run.failures.into_iter().map(|notice| view! { <FailureBar notice/> }).collect_view()}
        </li>
    }
}

/// The set-up in one line.
fn set_up_line(set_up: &SetUp) -> String {
    let mut parts = vec![i18n::hits_n(u32::from(set_up.hits))];
    parts.push(
        set_up.flash.map_or_else(|| i18n::no_flash().to_owned(), |flash| i18n::flash_for(i18n::seconds(flash.seconds))),
    );
    parts.extend(set_up.mesh.map(i18n::mesh));
    parts.extend(set_up.dryer.map(i18n::temperature));
    parts.extend(set_up.dwell.map(i18n::seconds));
    parts.join(" · ")
}
