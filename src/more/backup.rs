//! The backup file, out and in.

use crate::parts::{Icon, Page};
use crate::place::Place;
use crate::platform::files;
use crate::store::{BringError, Brought, Store};
use crate::words;
use leptos::html;
use leptos::prelude::*;

/// Backup, out and in.
#[component]
pub fn BackupScreen() -> impl IntoView {
    view! {
        <Page title=Signal::derive(|| words::backup_title().to_owned()) up=Place::More class="backup">
            <Out/>
            <In/>
            <Devices/>
        </Page>
    }
}

#[component]
fn Out() -> impl IntoView {
    let store = Store::from_context();
    let busy = move || store.backup.with(|backup| backup.busy);
    let last = move || {
        store.settings.with(|settings| match settings.backed_up {
            None => words::backup_never().to_owned(),
            Some(at) => {
                let since = store.shop.with(lastpull_core::shop::Shop::facts).saturating_sub(settings.backed_up_facts);
                format!("{} {}", words::backup_last(words::moment(at)), words::backup_since(words::facts(since as u32)))
            }
        })
    };
    view! {
        <section class="card">
            <h2><Icon name="out"/>{words::backup_out()}</h2>
            <p>{words::backup_out_text()}</p>
            <p class="quiet-line">{last}</p>
            {move || match store.backup.with(|backup| backup.ready.clone()) {
                None => view! {
                    <button type="button" class="button primary" id="prepare" disabled=busy on:click=move |_| store.prepare_backup()>
                        {move || if busy() { words::backup_busy() } else { words::backup_prepare() }}
                    </button>
                }.into_any(),
                Some(ready) => {
                    let can_share = ready.file.can_share();
                    view! {
                        <p id="ready">{words::backup_ready(words::bytes(ready.file.size()), words::facts(ready.facts as u32))}</p>
                        {(ready.photos > 0).then(|| view! { <p>{words::backup_photos(ready.photos)}</p> })}
                        {(ready.photos_left_out > 0).then(|| view! { <p class="caution">{words::backup_photos_left_out(ready.photos_left_out)}</p> })}
                        {(!ready.rescued.is_empty()).then(|| view! { <p><strong>{words::backup_rescued(ready.rescued.len() as u32)}</strong></p> })}
                        <div class="button-row">
                            {can_share.then(|| view! {
                                <button type="button" class="button primary with-icon" id="share" on:click=move |_| store.send_backup(true)><Icon name="out"/>{words::share()}</button>
                            })}
                            <button type="button" class="button with-icon" class:primary=!can_share id="download" on:click=move |_| store.send_backup(false)><Icon name="in"/>{words::backup_download()}</button>
                        </div>
                    }.into_any()
                }
            }}
        </section>
    }
}

#[component]
fn In() -> impl IntoView {
    let store = Store::from_context();
    let input = NodeRef::<html::Input>::new();
    let picked = move |_| {
        if let Some(input) = input.get_untracked() {
            store.bring(files::picked(&input));
        }
    };
    view! {
        <section class="card">
            <h2><Icon name="in"/>{words::backup_in()}</h2>
            <p>{words::backup_in_text()}</p>
            <label class="button file-button" class:busy=move || store.backup.with(|backup| backup.busy)>
                <input type="file" id="file" accept=".zip,application/zip" node_ref=input on:change=picked/>
                <span>{move || if store.backup.with(|backup| backup.busy) { words::backup_busy() } else { words::backup_pick() }}</span>
            </label>
            <div role="status" id="brought">
                {move || store.backup.with(|backup| backup.brought.clone()).map(|brought| match brought {
                    Ok(brought) => view! { <Arrived brought/> }.into_any(),
                    Err(error) => view! {
                        <p class="problem"><Icon name="alert"/>{bring_error(&error)}" "{words::nothing_changed()}</p>
                    }.into_any(),
                })}
            </div>
        </section>
    }
}

#[component]
fn Arrived(brought: Brought) -> impl IntoView {
    let (photos, missing, brought) = (brought.photos, brought.photos_missing, brought.facts);
    let known = words::facts(brought.known as u32);
    let text = if brought.new > 0 {
        words::brought_new(words::facts(brought.new as u32), known)
    } else {
        words::brought_nothing(known)
    };
    view! {
        <p class="verdict good"><Icon name="check"/><span>{text}</span></p>
        {(photos > 0).then(|| view! { <p id="brought-photos">{words::brought_photos(photos)}</p> })}
        {(missing > 0).then(|| view! { <p class="caution">{words::brought_photos_missing(missing)}</p> })}
        {(brought.gaps > 0).then(|| view! { <p class="caution">{words::brought_gaps(brought.gaps as u32)}</p> })}
        {(brought.far_ahead > 0).then(|| view! { <p class="caution">{words::brought_far_ahead(brought.far_ahead as u32)}</p> })}
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
                    <h2>{words::backup_devices()}</h2>
                    <ul class="plain">
                        {names.get().into_iter().map(|(id, name)| view! {
                            <li>{name}{(id == store.device.get()).then(|| format!(" · {}", words::backup_this_device()))}</li>
                        }).collect_view()}
                    </ul>
                </section>
            }
        })
    }
}

fn bring_error(error: &BringError) -> String {
    match error {
        BringError::NotRead => words::backup_not_read().into(),
        BringError::NotLoaded => words::part_failed_text().into(),
        BringError::NoRoom => words::photo_no_room().into(),
        BringError::File(problem) => words::backup_problem(*problem),
        BringError::Conflict(_) => words::backup_conflict().into(),
        BringError::Storage(fault) => words::storage_fault(fault),
    }
}
