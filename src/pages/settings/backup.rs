//! Exporting and importing the backup file.

use super::import::ImportSection;
use super::work_progress::WorkProgress;
use crate::components::{Icon, Page};
use crate::i18n;
use crate::route::{MoreRoute, Route};
use crate::store::{BackupFailure, BackupFile, Loading, Store};
use leptos::prelude::*;

/// The page. It works with a shop that does not open too: then it only exports.
#[component]
pub fn BackupPage() -> impl IntoView {
    let store = Store::from_context();
    let opened = Memo::new(move |_| matches!(store.loading.get(), Loading::Ready | Loading::DataGone));
    view! {
        <Page title=Signal::derive(|| i18n::backup_title().to_owned()) up=Route::More(MoreRoute::Menu) class="backup">
            <WorkProgress/>
            <ExportSection/>
            {move || opened.get().then(|| view! { <ImportSection/><Devices/> })}
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
            {move || store.backup.with(|backup| backup.failure.clone()).map(|failure| view! {
                <p class="problem" role="alert" id="not-made"><Icon name="alert"/>{failure_text(&failure)}</p>
            })}
            {move || match store.backup.with(|backup| backup.ready.clone()) {
                None => view! {
                    <button type="button" class="button primary" id="prepare" disabled=busy on:click=move |_| store.prepare_backup()>
                        {move || if busy() { i18n::backup_busy() } else { i18n::backup_prepare() }}
                    </button>
                }.into_any(),
                Some(ready) => view! { <Ready ready/> }.into_any(),
            }}
        </section>
    }
}

#[component]
fn Ready(ready: BackupFile) -> impl IntoView {
    let store = Store::from_context();
    let can_share = ready.file.can_share();
    let rescued = ready.rescued.len() as u32;
    let name = ready.file.name();
    let part = (!ready.whole).then(|| match ready.facts_of {
        Some(stored) => i18n::backup_part(ready.facts, stored),
        None => i18n::backup_part_unknown(ready.facts),
    });
    view! {
        <p id="ready">{i18n::backup_ready(i18n::bytes(ready.file.size()), i18n::facts(ready.facts as u32))}</p>
        {part.map(|part| view! {
            <div class="caution" id="part-only">
                <p><strong>{part}</strong></p>
                {(ready.unreadable > 0).then(|| view! { <p>{i18n::backup_pieces(ready.unreadable)}</p> })}
                <p>{i18n::backup_keep_part()}</p>
            </div>
        })}
        {(ready.photos > 0).then(|| view! { <p>{i18n::backup_photos(ready.photos)}</p> })}
        {(ready.photos_left_out > 0).then(|| view! { <p class="caution">{i18n::backup_photos_left_out(ready.photos_left_out)}</p> })}
        {(ready.photos_too_many > 0).then(|| view! { <p class="caution">{i18n::backup_photos_too_many(ready.photos_too_many)}</p> })}
        {(rescued > 0).then(|| view! { <p><strong>{i18n::backup_rescued(rescued)}</strong></p> })}
        <div class="button-row">
            {can_share.then(|| view! {
                <button type="button" class="button primary with-icon" id="share" on:click=move |_| store.send_backup(true)><Icon name="out"/>{i18n::share()}</button>
            })}
            <button type="button" class="button with-icon" class:primary=!can_share id="download" on:click=move |_| store.send_backup(false)><Icon name="in"/>{i18n::backup_download()}</button>
        </div>
        {move || store.backup.with(|backup| backup.sent).then(|| view! {
            <div role="status" id="sent">
                <p>{i18n::backup_sent(&name)}</p>
                {(rescued > 0).then(|| view! { <p><strong>{i18n::backup_sent_rescued(rescued)}</strong></p> })}
                <button type="button" class="button primary with-icon" id="have-backup" on:click=move |_| store.confirm_backup()><Icon name="check"/>{i18n::backup_have()}</button>
            </div>
        })}
    }
}

fn failure_text(failure: &BackupFailure) -> String {
    match failure {
        BackupFailure::NothingRead(fault) => {
            format!("{} {}", i18n::backup_nothing_read(), i18n::storage_fault(fault))
        }
        BackupFailure::NotReadBack(problem) => {
            format!("{} {}", i18n::backup_not_read_back(), i18n::backup_problem(*problem))
        }
        BackupFailure::NotMade => i18n::backup_not_made().into(),
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
