//! The form of a job.

use crate::components::{NotHere, Page, Switch};
use crate::forms::{Field, FormSubmit, Kind, SaveBar, TextArea, bound, set};
use crate::i18n;
use crate::platform::{clock, ids};
use crate::route::Route;
use crate::store::Store;
use lastpull_core::facts::Fact;
use lastpull_core::ids::JobId;
use lastpull_core::job::JobForm;
use leptos::prelude::*;

/// A new job, or the fields of an existing one.
#[component]
pub fn JobFormPage(#[prop(into)] job: Option<JobId>) -> impl IntoView {
    let store = Store::from_context();
    let before = job.and_then(|id| store.shop.with_untracked(|shop| shop.job(id).filter(|job| !job.deleted).cloned()));
    if job.is_some() && before.is_none() {
        return view! { <NotHere/> }.into_any();
    }
    let form = RwSignal::new(before.as_ref().map(JobForm::of).unwrap_or_default());
    // One id per form, so that saving twice creates one record.
    let id = job.unwrap_or_else(ids::new_id);
    let clients = store.shop.with_untracked(|shop| {
        let mut clients: Vec<String> = shop.jobs().map(|(_, job)| job.client.clone()).collect();
        lastpull_core::collections::sort_by(&mut clients, Ord::cmp);
        clients.dedup();
        clients
    });
    let exempt = Signal::derive(move || form.with(|form| form.exempt));
    let submit = FormSubmit::new(Box::new(move || {
        let today = clock::now().today();
        let fields = store.shop.with_untracked(|shop| {
            form.with(|form| form.check(today, before.as_ref(), |day| shop.closings.due_on(day)))
        })?;
        Ok(set(id, fields, Fact::JobSet))
    }));
    let problems = submit.problems;
    let title = if job.is_some() { i18n::job_edit_title() } else { i18n::new_job() };
    let up = job.map_or(Route::Jobs, Route::Job);
    view! {
        <Page title=Signal::derive(move || title.to_owned()) up class="form">
            <form on:submit=move |event| submit.submit(store, &event, Route::Job(id)) novalidate=true>
                <Field label=i18n::job_client() kind=Kind::Words bound=bound!(form.client) problems suggestions=clients/>
                <Field label=i18n::job_name() kind=Kind::Words bound=bound!(form.title) problems hint=i18n::job_name_hint()/>
                <div class="field-pair">
                    <Field label=i18n::job_due_day() kind=Kind::Day bound=bound!(form.due_day) problems/>
                    <Field label=i18n::job_due_time() kind=Kind::Time bound=bound!(form.due_time) problems hint=i18n::job_due_hint()/>
                </div>
                <TextArea label=i18n::notes() bound=bound!(form.notes) problems/>
                <Switch
                    id="exempt"
                    label=i18n::job_exempt()
                    hint=i18n::job_exempt_hint()
                    value=exempt
                    on_set=Callback::new(move |on| form.update(|form| form.exempt = on))
                />
                <SaveBar problems busy=submit.busy/>
            </form>
        </Page>
    }
    .into_any()
}
