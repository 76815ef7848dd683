//! Jobs, their garment lots and runs: the list, the job, the forms.

mod job;
mod job_form;
mod list;
mod lot_form;
mod lot_section;
mod run_form;

use crate::route::JobsRoute;
use job::JobPage;
use job_form::JobFormPage;
use leptos::prelude::*;
use list::JobsPage;
use lot_form::LotFormPage;
use run_form::RunFormPage;

/// Draws the page of a route.
pub fn page(route: JobsRoute) -> AnyView {
    match route {
        JobsRoute::List => view! { <JobsPage/> }.into_any(),
        JobsRoute::New => view! { <JobFormPage job=None repeats=None/> }.into_any(),
        JobsRoute::Job(id) => view! { <JobPage id/> }.into_any(),
        JobsRoute::Edit(id) => view! { <JobFormPage job=id repeats=None/> }.into_any(),
        JobsRoute::Repeat(id) => view! { <JobFormPage job=None repeats=id/> }.into_any(),
        JobsRoute::NewLot(job) => view! { <LotFormPage job=job lot=None/> }.into_any(),
        JobsRoute::EditLot(lot) => view! { <LotFormPage job=None lot=lot/> }.into_any(),
        JobsRoute::NewRun(lot) => view! { <RunFormPage lot=lot run=None/> }.into_any(),
        JobsRoute::EditRun(run) => view! { <RunFormPage lot=None run=run/> }.into_any(),
    }
}
