//! The job form.

use crate::kept::{RwSignal, Signal};
use crate::live::Drawn;
use crate::parts::{Field, Kind, NotHere, Page, SaveBar, Switch, TextArea, bound};
use crate::place::Place;
use crate::platform::spawn_local;
use crate::platform::{clock, ids};
use crate::store::Store;
use crate::words;
use lastpull_core::job::{JobForm, JobId, Problems};
use lastpull_core::journal::Fact;
use lastpull_view::view;
use leptos::prelude::*;

/// A new job, or a job's fields.
#[component(transparent)]
pub fn JobFormScreen(#[prop(into)] job: Option<JobId>) -> Drawn {
    let store = Store::from_context();
    let before = job.and_then(|id| store.shop.with_untracked(|shop| shop.job(id).filter(|job| !job.deleted).cloned()));
    if job.is_some() && before.is_none() {
        return view! { <NotHere/> }.into_any();
    }
    let form = RwSignal::new(before.as_ref().map(JobForm::of).unwrap_or_default());
    let problems = RwSignal::new(Problems::new());
    let busy = RwSignal::new(false);
    // One id a form: saving twice is still one.
    let id = job.unwrap_or_else(ids::new_id);
    let clients = store.shop.with_untracked(|shop| {
        let mut clients: Vec<String> = shop.jobs().map(|(_, job)| job.client.clone()).collect();
        lastpull_core::sorted::sort_by(&mut clients, Ord::cmp);
        clients.dedup();
        clients
    });
    let exempt = Signal::derive(move || form.with(|form| form.exempt));
    let before_check = before.clone();
    // Once told what is wrong, the person sees it vanish as they put it right.
    let check = move || {
        let today = clock::now().today();
        store.shop.with_untracked(|shop| {
            form.with(|form| form.check(today, before_check.as_ref(), |day| shop.closings.on(day)))
        })
    };
    let recheck = check.clone();
    Effect::new(move || {
        let result = recheck();
        if problems.with_untracked(|problems| !problems.is_empty()) {
            problems.set(result.err().unwrap_or_default());
        }
    });
    let save = move |event: leptos::ev::SubmitEvent| {
        event.prevent_default();
        match check() {
            Err(found) => problems.set(found),
            Ok(fields) => {
                busy.set(true);
                spawn_local(async move {
                    let saved = fields.is_empty() || store.record_and_wait(vec![(id, Fact::JobSet(fields))]).await;
                    busy.set(false);
                    if saved {
                        Place::Job(id).go();
                    }
                });
            }
        }
    };
    let title = if job.is_some() { words::job_edit_title() } else { words::job_new_title() };
    let up = job.map_or(Place::Jobs, Place::Job);
    view! {
        <Page title=Signal::derive(move || title.to_owned()) up class="form">
            <form on:submit=save novalidate=true>
                <Field name="client" label=words::job_client() kind=Kind::Words bound=bound(form, |f| &mut f.client) problems suggestions=clients/>
                <Field name="title" label=words::job_name() kind=Kind::Words bound=bound(form, |f| &mut f.title) problems hint=words::job_name_hint()/>
                <div class="field-pair">
                    <Field name="due_day" label=words::job_due_day() kind=Kind::Day bound=bound(form, |f| &mut f.due_day) problems/>
                    <Field name="due_time" label=words::job_due_time() kind=Kind::Time bound=bound(form, |f| &mut f.due_time) problems hint=words::job_due_hint()/>
                </div>
                <TextArea name="notes" label=words::job_notes() bound=bound(form, |f| &mut f.notes) problems/>
                <Switch
                    id="exempt"
                    label=words::job_exempt()
                    hint=words::job_exempt_hint()
                    value=exempt
                    on_set=Callback::new(move |on| form.update(|form| form.exempt = on))
                />
                <SaveBar problems busy/>
            </form>
        </Page>
    }
    .into_any()
}
