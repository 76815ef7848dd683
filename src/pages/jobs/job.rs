//! One job: its data, its garments and runs, and its actions.

use super::lot_section::LotSection;
use crate::components::{Icon, NotHere, Page, Sheet};
use crate::forms::delete;
use crate::i18n;
use crate::pages::shared::finish_job;
use crate::route::{JobsRoute, Route};
use crate::store::Store;
use lastpull_core::facts::Fact;
use lastpull_core::ids::JobId;
use lastpull_core::job::{JobCard, job_card};
use leptos::prelude::*;

/// The page.
#[component]
pub fn JobPage(id: JobId) -> impl IntoView {
    let store = Store::from_context();
    let card = Memo::new(move |_| store.shop.with(|shop| job_card(shop, id)));
    let here = Memo::new(move |_| card.with(Option::is_some));
    move || {
        if !here.get() {
            return view! { <NotHere/> }.into_any();
        }
        let title = Signal::derive(move || {
            card.with(|card| card.as_ref().map(|card| card.job.title.clone()).unwrap_or_default())
        });
        let aside = move || {
            view! { <a class="icon-button" href=JobsRoute::Edit(id).hash() aria-label=i18n::edit()><Icon name="edit"/></a> }
        };
        view! {
            <Page title up=Route::Jobs(JobsRoute::List) aside class="job">
                {move || card.get().map(|card| view! { <Facts card=card.clone()/> <Lots card=card.clone()/> <Actions card/> })}
            </Page>
        }
        .into_any()
    }
}

#[component]
fn Facts(card: JobCard) -> impl IntoView {
    let job = card.job;
    view! {
        <div class="job-facts">
            <p class="job-client">{job.client}</p>
            <p class="badges">
                <span class="badge"><Icon name="clock"/>{job.due.map_or_else(|| i18n::no_due().to_owned(), |due| i18n::due_at(i18n::due(due)))}</span>
                {job.exempt.then(|| view! { <span class="badge">{i18n::job_exempt_badge()}</span> })}
                {job.repeat_of.map(|of| view! { <a class="badge" href=JobsRoute::Job(of).hash()><Icon name="repeat"/>{i18n::job_is_repeat()}</a> })}
                {job.finished.map(|at| view! { <span class="badge good"><Icon name="check"/>{i18n::finished_on(i18n::moment(at))}</span> })}
            </p>
            {(!job.notes.is_empty()).then(|| view! { <p class="job-notes">{job.notes.clone()}</p> })}
            {(card.planned > 0).then(|| view! {
                <label class="progress">
                    <span>{i18n::job_progress()}</span>
                    <progress max=card.planned value=card.good></progress>
                    <strong>{i18n::of_pieces(card.good, card.planned)}{(card.over > 0).then(|| format!(" · {}", i18n::count_over(card.over)))}</strong>
                </label>
            })}
        </div>
    }
}

#[component]
fn Lots(card: JobCard) -> impl IntoView {
    let id = card.id;
    let none = card.lots.is_empty();
    view! {
        <section class="lots">
            <h2>{i18n::lot_title()}</h2>
            {none.then(|| view! { <p class="quiet-line">{i18n::lot_none()}</p> })}
            {card.lots.into_iter().map(|lot| view! { <LotSection lot/> }).collect_view()}
            <a class="button with-icon" class:primary=none href=JobsRoute::NewLot(id).hash()><Icon name="plus"/>{i18n::lot_add()}</a>
        </section>
    }
}

#[component]
fn Actions(card: JobCard) -> impl IntoView {
    let store = Store::from_context();
    let id = card.id;
    let title = StoredValue::new(card.job.title.clone());
    let finished = card.job.finished.is_some();
    let short = card.planned.saturating_sub(card.good);
    let asking = RwSignal::new(false);
    let finish = move || {
        asking.set(false);
        finish_job(store, id);
    };
    let reopen = move |_| {
        store.record_with_undo(
            vec![(id, Fact::JobReopened)],
            vec![(id, Fact::JobFinished)],
            i18n::job_reopened(title.get_value()),
        );
    };
    let deleting = RwSignal::new(false);
    let delete = move |_| {
        deleting.set(false);
        delete(store, id, i18n::job_deleted(title.get_value()), Route::Jobs(JobsRoute::List));
    };
    view! {
        <section class="job-actions button-row">
            {if finished {
                view! { <button type="button" class="button with-icon" on:click=reopen><Icon name="undo"/>{i18n::job_reopen()}</button> }.into_any()
            } else if card.planned == 0 {
                ().into_any()
            } else {
                view! {
                    <button
                        type="button"
                        class="button with-icon"
                        class:primary=card.complete
                        on:click=move |_| { if short > 0 { asking.set(true) } else { finish() } }
                    >
                        <Icon name="check"/>{i18n::job_finish()}
                    </button>
                }.into_any()
            }}
            <a class="button with-icon" href=JobsRoute::Repeat(id).hash()><Icon name="repeat"/>{i18n::job_repeat()}</a>
            <button type="button" class="button with-icon danger" id="delete-job" on:click=move |_| deleting.set(true)><Icon name="bin"/>{i18n::delete()}</button>
        </section>
        {move || deleting.get().then(|| view! {
            <Sheet title=i18n::job_delete_sure() on_close=Callback::new(move |()| deleting.set(false))>
                <p>{i18n::job_delete_sure_text()}</p>
                <div class="button-row">
                    <button type="button" class="button danger" id="delete-yes" on:click=delete>{i18n::delete()}</button>
                    <button type="button" class="button primary" on:click=move |_| deleting.set(false)>{i18n::cancel()}</button>
                </div>
            </Sheet>
        })}
        {move || asking.get().then(|| view! {
            <Sheet title=i18n::job_finish() on_close=Callback::new(move |()| asking.set(false))>
                <p>{i18n::job_finish_short(short)}</p>
                <div class="button-row">
                    <button type="button" class="button primary" on:click=move |_| finish()>{i18n::job_finish_anyway()}</button>
                    <button type="button" class="button" on:click=move |_| asking.set(false)>{i18n::cancel()}</button>
                </div>
            </Sheet>
        })}
    }
}
