//! The list of jobs.

use crate::components::{Empty, GarmentChip, Icon, LongList, Page, SearchField, searched};
use crate::i18n;
use crate::route::{JobsRoute, Route};
use crate::store::Store;
use lastpull_core::ids::JobId;
use lastpull_core::job::{JobRow, PrintSwatch, job_list, job_row, job_texts};
use leptos::prelude::*;

/// The list of jobs: open ones by due date, finished ones below.
#[component]
pub fn JobsPage() -> impl IntoView {
    let store = Store::from_context();
    let search = searched();
    let all = Memo::new(move |_| store.shop.with(job_list));
    // Made at the first search, and again only when the shop changes.
    let texts = Memo::new(move |_| store.shop.with(job_texts));
    let list = Memo::new(move |_| {
        let search = search.get();
        if search.trim().is_empty() { all.get() } else { texts.with(|texts| texts.found(&search)) }
    });
    let open = Memo::new(move |_| list.with(|list| list.open.clone()));
    let finished = Memo::new(move |_| list.with(|list| list.finished.clone()));
    let none_open = Memo::new(move |_| open.with(Vec::is_empty));
    let none_finished = Memo::new(move |_| finished.with(Vec::is_empty));
    let is_new = Memo::new(move |_| all.with(|all| all.open.is_empty() && all.finished.is_empty()));
    let aside = move || {
        view! {
            <a class="button primary with-icon" href=JobsRoute::New.hash()><Icon name="plus"/>{i18n::new_job()}</a>
        }
    };
    view! {
        <Page title=Signal::derive(|| i18n::nav_jobs().to_owned()) up=Route::Day aside class="jobs">
            {move || if is_new.get() {
                view! {
                    <Empty icon="jobs" title=i18n::jobs_empty_title() text=i18n::jobs_empty_text()>
                        <a class="button primary" href=JobsRoute::New.hash()>{i18n::new_job()}</a>
                    </Empty>
                }.into_any()
            } else {
                view! {
                    <SearchField label=i18n::jobs_search() search/>
                    <section id="open-jobs">
                        <h2>{i18n::jobs_open()}</h2>
                        {move || if none_open.get() {
                            let searching = !search.with(String::is_empty);
                            let text = if searching { i18n::jobs_none_found() } else { i18n::jobs_none_open() };
                            view! { <p class="quiet-line">{text}</p> }.into_any()
                        } else {
                            rows(store, "open", open)
                        }}
                    </section>
                    {move || (!none_finished.get()).then(|| view! {
                        <section id="finished-jobs">
                            <h2>{i18n::jobs_finished()}</h2>
                            {rows(store, "finished", finished)}
                        </section>
                    })}
                }.into_any()
            }}
        </Page>
    }
}

fn rows(store: Store, name: &'static str, jobs: Memo<Vec<JobId>>) -> AnyView {
    let length = Memo::new(move |_| jobs.with(Vec::len));
    let row = Callback::new(move |index: usize| {
        let job = Memo::new(move |_| jobs.with(|jobs| jobs.get(index).copied()));
        let shown = store.every_minute(move |shop, clock| job_row(shop, clock, job.get()?));
        (move || shown.get().map(row)).into_any()
    });
    view! { <LongList name class="job-rows" length row/> }.into_any()
}

fn row(row: JobRow) -> impl IntoView {
    let PrintSwatch { garment, ink } = row.swatches.first().copied().unwrap_or_default();
    let when = match (row.finished, row.due) {
        (Some(at), _) => i18n::finished_on(i18n::moment(at)),
        (None, Some(due)) => i18n::due_at(i18n::due(due)),
        (None, None) => i18n::no_due().to_owned(),
    };
    view! {
        <a class="job-row" href=JobsRoute::Job(row.id).hash()>
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
    }
}
