//! The list of jobs.

use crate::components::{Empty, GarmentChip, Icon, Page};
use crate::i18n;
use crate::route::Route;
use crate::store::Store;
use lastpull_core::job::{JobRow, job_list};
use leptos::prelude::*;

/// The list of jobs: open ones by due date, finished ones below.
#[component]
pub fn JobsPage() -> impl IntoView {
    let store = Store::from_context();
    let search = RwSignal::new(String::new());
    let list = store.every_minute(move |shop, clock| job_list(shop, clock, &search.get()));
    let is_new = Memo::new(move |_| store.shop.with(|shop| !shop.jobs().any(|(_, job)| !job.deleted)));
    let aside = move || {
        view! {
            <a class="button primary with-icon" href=Route::NewJob.hash()><Icon name="plus"/>{i18n::new_job()}</a>
        }
    };
    view! {
        <Page title=Signal::derive(|| i18n::place_jobs().to_owned()) up=Route::Day aside class="jobs">
            {move || if is_new.get() {
                view! {
                    <Empty icon="jobs" title=i18n::jobs_empty_title() text=i18n::jobs_empty_text()>
                        <a class="button primary" href=Route::NewJob.hash()>{i18n::new_job()}</a>
                    </Empty>
                }.into_any()
            } else {
                view! {
                    <div class="search">
                        <label class="visually-hidden" for="search">{i18n::jobs_search()}</label>
                        <input
                            id="search"
                            type="search"
                            placeholder=i18n::jobs_search()
                            prop:value=search
                            on:input=move |event| search.set(event_target_value(&event))
                        />
                    </div>
                    <section>
                        <h2>{i18n::jobs_open()}</h2>
                        {move || list.with(|list| rows(&list.open, !search.with(String::is_empty)))}
                    </section>
                    {move || list.with(|list| (!list.finished.is_empty()).then(|| view! {
                        <section>
                            <h2>{i18n::jobs_finished()}</h2>
                            {rows(&list.finished, false)}
                            {list.has_older.then(|| view! { <p class="quiet-line">{i18n::jobs_older()}</p> })}
                        </section>
                    }))}
                }.into_any()
            }}
        </Page>
    }
}

fn rows(rows: &[JobRow], searching: bool) -> AnyView {
    if rows.is_empty() {
        let text = if searching { i18n::jobs_none_found() } else { i18n::jobs_none_open() };
        return view! { <p class="quiet-line">{text}</p> }.into_any();
    }
    let rows: Vec<JobRow> = rows.to_vec();
    view! { <ul class="job-rows">{rows.into_iter().map(|row| view! { <Row row/> }).collect_view()}</ul> }.into_any()
}

#[component]
fn Row(row: JobRow) -> impl IntoView {
    let (garment, ink) = row.swatches.first().copied().unwrap_or_default();
    let when = match (row.finished, row.due) {
        (Some(at), _) => i18n::finished_on(i18n::moment(at)),
        (None, Some(due)) => i18n::due_at(i18n::due(due)),
        (None, None) => i18n::no_due().to_owned(),
    };
    view! {
        <li>
            <a class="job-row" href=Route::Job(row.id).hash()>
                <GarmentChip garment ink/>
                <span class="row-words">
                    <strong>{row.title}</strong>
                    <span>{row.client}</span>
                    <span class="muted">
                        {when}
                        {row.overdue.then(|| view! { " " <span class="badge bad"><Icon name="alert"/>{i18n::overdue()}</span> })}
                    </span>
                </span>
                <span class="row-count">
                    {i18n::of_pieces(row.good, row.planned)}
                    {(row.over > 0).then(|| view! { <span class="badge tight">{i18n::count_over(row.over)}</span> })}
                    {(row.complete && row.finished.is_none()).then(|| view! { <span class="badge good"><Icon name="check"/>{i18n::printed()}</span> })}
                </span>
            </a>
        </li>
    }
}
