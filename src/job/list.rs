//! All jobs.

use crate::parts::{Empty, GarmentChip, Icon, Page};
use crate::place::Place;
use crate::store::Store;
use crate::words;
use lastpull_core::job::{JobRow, job_list};
use leptos::prelude::*;

/// All jobs: open ones by due date, finished ones below.
#[component]
pub fn JobsScreen() -> impl IntoView {
    let store = Store::from_context();
    let search = RwSignal::new(String::new());
    let minute = Memo::new(move |_| store.clock.get().now / 60_000);
    let list = Memo::new(move |_| {
        minute.get();
        store.shop.with(|shop| job_list(shop, store.clock.get_untracked(), &search.get()))
    });
    let is_new = Memo::new(move |_| store.shop.with(|shop| !shop.jobs().any(|(_, job)| !job.deleted)));
    let aside = move || {
        view! {
            <a class="button primary with-icon" href=Place::NewJob.hash()><Icon name="plus"/>{words::new_job()}</a>
        }
    };
    view! {
        <Page title=Signal::derive(|| words::place_jobs().to_owned()) up=Place::Day aside class="jobs">
            {move || if is_new.get() {
                view! {
                    <Empty icon="jobs" title=words::jobs_empty_title() text=words::jobs_empty_text()>
                        <a class="button primary" href=Place::NewJob.hash()>{words::new_job()}</a>
                    </Empty>
                }.into_any()
            } else {
                view! {
                    <div class="search">
                        <label class="visually-hidden" for="search">{words::jobs_search()}</label>
                        <input
                            id="search"
                            type="search"
                            placeholder=words::jobs_search()
                            prop:value=search
                            on:input=move |event| search.set(event_target_value(&event))
                        />
                    </div>
                    <section>
                        <h2>{words::jobs_open()}</h2>
                        {move || list.with(|list| rows(&list.open, !search.with(String::is_empty)))}
                    </section>
                    {move || list.with(|list| (!list.finished.is_empty()).then(|| view! {
                        <section>
                            <h2>{words::jobs_finished()}</h2>
                            {rows(&list.finished, false)}
                        </section>
                    }))}
                }.into_any()
            }}
        </Page>
    }
}

fn rows(rows: &[JobRow], searching: bool) -> AnyView {
    if rows.is_empty() {
        let text = if searching { words::jobs_none_found() } else { words::jobs_none_open() };
        return view! { <p class="quiet-line">{text}</p> }.into_any();
    }
    let rows: Vec<JobRow> = rows.to_vec();
    view! { <ul class="job-rows">{rows.into_iter().map(|row| view! { <Row row/> }).collect_view()}</ul> }.into_any()
}

#[component]
fn Row(row: JobRow) -> impl IntoView {
    let (garment, ink) = row.swatches.first().copied().unwrap_or_default();
    let when = match (row.finished, row.due) {
        (Some(at), _) => words::finished_on(words::moment(at)),
        (None, Some(due)) => words::due_at(words::due(due)),
        (None, None) => words::no_due().to_owned(),
    };
    view! {
        <li>
            <a class="job-row" href=Place::Job(row.id).hash()>
                <GarmentChip garment ink/>
                <span class="row-words">
                    <strong>{row.title}</strong>
                    <span>{row.client}</span>
                    <span class="muted">
                        {when}
                        {row.overdue.then(|| view! { " " <span class="badge bad"><Icon name="alert"/>{words::overdue()}</span> })}
                    </span>
                </span>
                <span class="row-count">{words::of_pieces(row.good, row.planned)}</span>
            </a>
        </li>
    }
}
