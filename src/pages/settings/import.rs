//! Importing a backup file: what is in it, the decision, the result, and taking it back.

use crate::components::Icon;
use crate::i18n;
use crate::platform::files;
use crate::store::{ImportError, ImportSummary, Store};
use lastpull_core::exchange::{FileDevice, FileOrigin, ImportPreview};
use lastpull_core::journal::StorageFault;
use leptos::html;
use leptos::prelude::*;

/// The section of the backup page.
#[component]
pub fn ImportSection() -> impl IntoView {
    let store = Store::from_context();
    let input = NodeRef::<html::Input>::new();
    store.recall_import();
    let busy = move || store.backup.with(|backup| backup.busy);
    let picked = move |_| {
        if let Some(input) = input.get_untracked() {
            store.pick_file(files::picked(&input));
        }
    };
    view! {
        <section class="card">
            <h2><Icon name="in"/>{i18n::backup_in()}</h2>
            <p>{i18n::backup_in_text()}</p>
            <label class="button file-button" class:busy=busy>
                <input type="file" id="file" accept=".zip,application/zip" node_ref=input on:change=picked/>
                <span>{move || if busy() { i18n::backup_busy() } else { i18n::backup_pick() }}</span>
            </label>
            {move || store.backup.with(|backup| backup.preview.clone()).map(|preview| view! { <Preview preview/> })}
            <div role="status" id="import-result">
                {move || store.backup.with(|backup| backup.imported.clone()).map(|imported| match imported {
                    Ok(imported) => view! { <ImportReport imported/> }.into_any(),
                    Err(error) => view! { <Refused error/> }.into_any(),
                })}
                {move || store.backup.with(|backup| backup.taken_back.clone()).map(|taken| match taken {
                    Ok(facts) => view! {
                        <p class="verdict good"><Icon name="check"/><span>{i18n::import_taken_back(i18n::facts(facts as u32))}</span></p>
                    }.into_any(),
                    Err(error) => view! { <Refused error/> }.into_any(),
                })}
            </div>
            {move || store.backup.with(|backup| backup.can_take_back.filter(|_| backup.preview.is_none())).map(|at| view! {
                <p class="quiet-line" id="import-at">{i18n::import_at(i18n::moment(at))}" "{i18n::import_take_back_text()}</p>
                <button type="button" class="button with-icon" id="take-back" disabled=busy on:click=move |_| store.take_back_import()>
                    <Icon name="undo"/>{i18n::import_take_back()}
                </button>
            })}
        </section>
    }
}

#[component]
fn Preview(preview: ImportPreview) -> impl IntoView {
    let store = Store::from_context();
    let foreign = preview.is_foreign();
    let caution = match preview.origin {
        FileOrigin::Demo => Some(i18n::preview_demo()),
        FileOrigin::OtherShop => Some(i18n::preview_other()),
        FileOrigin::SameShop | FileOrigin::FirstData => None,
    };
    let name = preview.shop_name.clone();
    let changes = changes(&preview);
    view! {
        <div class="preview" id="preview" data-origin=origin_name(preview.origin) role="region" aria-label=i18n::preview_title()>
            <h3>{i18n::preview_title()}</h3>
            <p id="preview-shop"><strong>{name.map_or_else(|| i18n::preview_no_name().to_owned(), i18n::preview_shop)}</strong></p>
            {caution.map(|caution| view! { <p class="caution" role="alert"><Icon name="alert"/>{caution}</p> })}
            <p>{i18n::preview_facts(i18n::facts(preview.new as u32), i18n::facts((preview.facts - preview.new) as u32))}</p>
            {preview.latest.map(|at| view! { <p>{i18n::preview_latest(i18n::moment(at))}</p> })}
            <ul class="plain">{preview.devices.iter().map(device_row).collect_view()}</ul>
            {(!changes.is_empty()).then(|| view! {
                <h3>{i18n::preview_changes()}</h3>
                <ul class="plain" id="preview-changes">{changes.into_iter().map(|line| view! { <li>{line}</li> }).collect_view()}</ul>
            })}
            <div class="button-row">
                <button type="button" class="button" class:primary=!foreign class:danger=foreign id="import-file" on:click=move |_| store.import()>
                    {if foreign { i18n::preview_import_anyway() } else { i18n::preview_import() }}
                </button>
                <button type="button" class="button" class:primary=foreign id="leave-file" on:click=move |_| store.leave_file()>{i18n::preview_leave()}</button>
            </div>
        </div>
    }
}

fn origin_name(origin: FileOrigin) -> &'static str {
    match origin {
        FileOrigin::FirstData => "first",
        FileOrigin::SameShop => "same",
        FileOrigin::OtherShop => "other",
        FileOrigin::Demo => "demo",
    }
}

fn device_row(device: &FileDevice) -> impl IntoView + use<> {
    let name = device.name.clone().unwrap_or_else(|| i18n::preview_device_unnamed().into());
    view! { <li>{i18n::preview_device(name, i18n::facts(device.facts as u32), device.new)}</li> }
}

fn changes(preview: &ImportPreview) -> Vec<String> {
    let mut lines = Vec::new();
    lines.extend((preview.new_jobs > 0).then(|| i18n::preview_new_jobs(preview.new_jobs)));
    lines.extend((preview.changed_jobs > 0).then(|| i18n::preview_changed_jobs(preview.changed_jobs)));
    lines.extend((preview.pieces != 0).then(|| i18n::preview_pieces(preview.pieces)));
    lines.extend((preview.deletes > 0).then(|| i18n::preview_deletes(preview.deletes)));
    lines.extend(preview.shop_name.as_ref().filter(|_| preview.renames).map(i18n::preview_renames));
    lines.extend(preview.settings.iter().map(|setting| i18n::preview_sets(*setting).to_owned()));
    lines
}

#[component]
fn ImportReport(imported: ImportSummary) -> impl IntoView {
    let (photos, missing, imported) = (imported.photos, imported.photos_missing, imported.facts);
    let known = i18n::facts(imported.known as u32);
    let text = if imported.new > 0 {
        i18n::import_new(i18n::facts(imported.new as u32), known)
    } else {
        i18n::import_nothing(known)
    };
    view! {
        <p class="verdict good"><Icon name="check"/><span>{text}</span></p>
        {(photos > 0).then(|| view! { <p id="import-photos">{i18n::import_photos(photos)}</p> })}
        {(missing > 0).then(|| view! { <p class="caution">{i18n::import_photos_missing(missing)}</p> })}
        {(imported.gaps > 0).then(|| view! { <p class="caution">{i18n::import_gaps(imported.gaps as u32)}</p> })}
        {(imported.forks > 0).then(|| view! { <p class="caution" id="import-forks">{i18n::import_forks()}</p> })}
        {imported.renewed.then(|| view! { <p class="caution" id="import-renewed">{i18n::import_renewed()}</p> })}
        {(imported.far_ahead > 0).then(|| view! { <p class="caution">{i18n::import_far_ahead(imported.far_ahead as u32)}</p> })}
    }
}

#[component]
fn Refused(error: ImportError) -> impl IntoView {
    view! { <p class="problem"><Icon name="alert"/>{import_error(&error)}" "{i18n::nothing_changed()}</p> }
}

fn import_error(error: &ImportError) -> String {
    match error {
        ImportError::NotRead => i18n::backup_not_read().into(),
        ImportError::ChunkNotLoaded => i18n::chunk_failed_text().into(),
        ImportError::NoRoom => i18n::photo_no_room().into(),
        ImportError::File(problem) => i18n::backup_problem(*problem),
        ImportError::TooMany(_) => i18n::backup_too_many().into(),
        ImportError::Storage(StorageFault::Unreadable(_)) => i18n::import_onto_damage().into(),
        ImportError::Storage(fault) => i18n::storage_fault(fault),
    }
}
