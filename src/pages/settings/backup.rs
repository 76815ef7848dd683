//! Exporting and importing the backup file.

use crate::components::{Icon, Page};
use crate::i18n;
use crate::platform::files;
use crate::route::{MoreRoute, Route};
use crate::store::{ImportError, ImportSummary, Store};
use leptos::html;
use leptos::prelude::*;

/// The page.
#[component]
pub fn BackupPage() -> impl IntoView {
    view! {
        <Page title=Signal::derive(|| i18n::backup_title().to_owned()) up=Route::More(MoreRoute::Menu) class="backup">
            <ExportSection/>
            <ImportSection/>
            <Devices/>
        </Page>
    }
}

#[component]
fn ExportSection() -> impl IntoView {
    let store = Store::from_context();
    let busy = move || store.backup.with(|backup| backup.busy);
    let last = move || {
        store.settings.with(|settings| match settings.backed_up {
            None => i18n::backup_never().to_owned(),
            Some(at) => {
                let since =
                    store.shop.with(lastpull_core::shop::Shop::fact_count).saturating_sub(settings.backed_up_facts);
                format!("{} {}", i18n::backup_last(i18n::moment(at)), i18n::backup_since(i18n::facts(since as u32)))
            }
        })
    };
    view! {
        <section class="card">
            <h2><Icon name="out"/>{i18n::backup_out()}</h2>
            <p>{i18n::backup_out_text()}</p>
            <p class="quiet-line">{last}</p>
            {move || match store.backup.with(|backup| backup.ready.clone()) {
                None => view! {
                    <button type="button" class="button primary" id="prepare" disabled=busy on:click=move |_| store.prepare_backup()>
                        {move || if busy() { i18n::backup_busy() } else { i18n::backup_prepare() }}
                    </button>
                }.into_any(),
                Some(ready) => {
                    let can_share = ready.file.can_share();
                    view! {
                        <p id="ready">{i18n::backup_ready(i18n::bytes(ready.file.size()), i18n::facts(ready.facts as u32))}</p>
                        {(ready.photos > 0).then(|| view! { <p>{i18n::backup_photos(ready.photos)}</p> })}
                        {(ready.photos_left_out > 0).then(|| view! { <p class="caution">{i18n::backup_photos_left_out(ready.photos_left_out)}</p> })}
                        {(!ready.rescued.is_empty()).then(|| view! { <p><strong>{i18n::backup_rescued(ready.rescued.len() as u32)}</strong></p> })}
                        <div class="button-row">
                            {can_share.then(|| view! {
                                <button type="button" class="button primary with-icon" id="share" on:click=move |_| store.send_backup(true)><Icon name="out"/>{i18n::share()}</button>
                            })}
                            <button type="button" class="button with-icon" class:primary=!can_share id="download" on:click=move |_| store.send_backup(false)><Icon name="in"/>{i18n::backup_download()}</button>
                        </div>
                    }.into_any()
                }
            }}
        </section>
    }
}

#[component]
fn ImportSection() -> impl IntoView {
    let store = Store::from_context();
    let input = NodeRef::<html::Input>::new();
    let picked = move |_| {
        if let Some(input) = input.get_untracked() {
            store.import(files::picked(&input));
        }
    };
    view! {
        <section class="card">
            <h2><Icon name="in"/>{i18n::backup_in()}</h2>
            <p>{i18n::backup_in_text()}</p>
            <label class="button file-button" class:busy=move || store.backup.with(|backup| backup.busy)>
                <input type="file" id="file" accept=".zip,application/zip" node_ref=input on:change=picked/>
                <span>{move || if store.backup.with(|backup| backup.busy) { i18n::backup_busy() } else { i18n::backup_pick() }}</span>
            </label>
            <div role="status" id="brought">
                {move || store.backup.with(|backup| backup.imported.clone()).map(|imported| match imported {
                    Ok(imported) => view! { <ImportReport imported/> }.into_any(),
                    Err(error) => view! {
                        <p class="problem"><Icon name="alert"/>{import_error(&error)}" "{i18n::nothing_changed()}</p>
                    }.into_any(),
                })}
            </div>
        </section>
    }
}

#[component]
fn ImportReport(imported: ImportSummary) -> impl IntoView {
    let (photos, missing, imported) = (imported.photos, imported.photos_missing, imported.facts);
    let known = i18n::facts(imported.known as u32);
    let text = if imported.new > 0 {
        i18n::brought_new(i18n::facts(imported.new as u32), known)
    } else {
        i18n::brought_nothing(known)
    };
    view! {
        <p class="verdict good"><Icon name="check"/><span>{text}</span></p>
        {(photos > 0).then(|| view! { <p id="brought-photos">{i18n::brought_photos(photos)}</p> })}
        {(missing > 0).then(|| view! { <p class="caution">{i18n::brought_photos_missing(missing)}</p> })}
        {(imported.gaps > 0).then(|| view! { <p class="caution">{i18n::brought_gaps(imported.gaps as u32)}</p> })}
        {(imported.far_ahead > 0).then(|| view! { <p class="caution">{i18n::brought_far_ahead(imported.far_ahead as u32)}</p> })}
    }
}

#[component]
fn Devices() -> impl IntoView {
    let store = Store::from_context();
    let names = Memo::new(move |_| {
        store.shop.with(|shop| shop.devices.iter().map(|(id, name)| (*id, name.clone())).collect::<Vec<_>>())
    });
    move || {
        (!names.with(Vec::is_empty)).then(|| {
            view! {
                <section class="card">
                    <h2>{i18n::backup_devices()}</h2>
                    <ul class="plain">
                        {names.get().into_iter().map(|(id, name)| view! {
                            <li>{name}{(id == store.device.get()).then(|| format!(" · {}", i18n::backup_this_device()))}</li>
                        }).collect_view()}
                    </ul>
                </section>
            }
        })
    }
}

fn import_error(error: &ImportError) -> String {
    match error {
        ImportError::NotRead => i18n::backup_not_read().into(),
        ImportError::ChunkNotLoaded => i18n::part_failed_text().into(),
        ImportError::NoRoom => i18n::photo_no_room().into(),
        ImportError::File(problem) => i18n::backup_problem(*problem),
        ImportError::Conflict(_) => i18n::backup_conflict().into(),
        ImportError::Storage(fault) => i18n::storage_fault(fault),
    }
}
