//! The form of a job.

use crate::components::{Icon, NotHere, Page, Switch};
use crate::forms::{Field, FormSubmit, Kind, SaveBar, TextArea, bound, set};
use crate::i18n;
use crate::platform::{clock, ids};
use crate::route::{JobsRoute, Route};
use crate::store::Store;
use lastpull_core::facts::Fact;
use lastpull_core::ids::JobId;
use lastpull_core::job::{JobForm, client_names, repeat_order};
use leptos::prelude::*;

/// A new job, a new one that repeats another, or the fields of an existing one.
#[component]
pub fn JobFormPage(#[prop(into)] job: Option<JobId>, #[prop(into)] repeats: Option<JobId>) -> impl IntoView {
    let store = Store::from_context();
    let live = |id: JobId| store.shop.with_untracked(|shop| shop.job(id).filter(|job| !job.deleted).cloned());
    let (before, original) = (job.and_then(live), repeats.and_then(live));
    if job.is_some() != before.is_some() || repeats.is_some() != original.is_some() {
        return view! { <NotHere/> }.into_any();
    }
    let start = before.as_ref().map(JobForm::of).or(original.as_ref().map(JobForm::again));
    let form = RwSignal::new(start.unwrap_or_default());
    // The same ids at each save, so that saving twice creates each record once.
    let new_ids = StoredValue::new(vec![job.unwrap_or_else(ids::new_id)]);
    let new_id = move |place: usize| {
        new_ids.update_value(|known| known.resize_with(known.len().max(place + 1), ids::new_id));
        new_ids.with_value(|known| known.get(place).copied().unwrap_or_default())
    };
    let id = new_id(0);
    let clients = store.shop.with_untracked(client_names);
    let exempt = Signal::derive(move || form.with(|form| form.exempt));
    let submit = FormSubmit::new(Box::new(move || {
        let today = clock::now().today();
        let fields = store.shop.with_untracked(|shop| {
            form.with(|form| form.check(today, before.as_ref(), |day| shop.closings.due_on(day)))
        })?;
        let Some(original) = repeats else { return Ok(set(id, fields, Fact::JobSet)) };
        let mut place = 0..;
        let next = || new_id(place.next().unwrap_or_default());
        Ok(store.shop.with_untracked(|shop| repeat_order(shop, original, fields, next)).1)
    }))
    .with_draft(form);
    let problems = submit.problems;
    let title = match (job, repeats) {
        (Some(_), _) => i18n::job_edit_title(),
        (_, Some(_)) => i18n::job_repeat(),
        _ => i18n::new_job(),
    };
    let up = Route::Jobs(job.or(repeats).map_or(JobsRoute::List, JobsRoute::Job));
    view! {
        <Page title=Signal::derive(move || title.to_owned()) up class="form">
            <form on:submit=move |event| submit.submit(store, &event, Route::Jobs(JobsRoute::Job(id))) novalidate=true>
                {submit.draft_line()}
                {repeats.is_some().then(|| view! { <p class="quiet-line" id="repeats"><Icon name="repeat"/>{i18n::job_repeats()}</p> })}
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
