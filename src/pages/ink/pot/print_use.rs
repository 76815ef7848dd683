//! The ink use of a run's print: its art, its mesh, its strokes.

use crate::components::{NotHere, Page};
use crate::forms::{Field, FormSubmit, Kind, SaveBar, bound};
use crate::i18n;
use crate::route::{ExposureRoute, PotRoute, Route};
use crate::store::Store;
use lastpull_core::facts::Fact;
use lastpull_core::ids::RunId;
use lastpull_core::ink::{InkFact, PrintForm, suggested_batch};
use leptos::prelude::*;

/// The form.
#[component]
pub fn PrintUsePage(run: RunId) -> impl IntoView {
    let store = Store::from_context();
    let units = i18n::units();
    let named = store.shop.with_untracked(|shop| {
        shop.job_of(run).zip(shop.run(run)).map(|((_, job), run)| (job.title.clone(), run.location, run.ink.clone()))
    });
    let Some((title, location, ink)) = named else { return view! { <NotHere/> }.into_any() };
    let left = store.shop.with_untracked(|shop| shop.pieces_left(run));
    let form = RwSignal::new(store.shop.with_untracked(|shop| PrintForm::of(shop, run, units)));
    let submit = FormSubmit::new(Box::new(move || {
        let (print, _) = form.with(|form| form.check(units))?;
        let same = store.shop.with_untracked(|shop| shop.ink.print(run) == Some(&print));
        Ok(if same { Vec::new() } else { vec![(run, Fact::Ink(InkFact::PrintSet(Some(print))))] })
    }))
    .with_draft(form);
    let problems = submit.problems;
    let batch = Memo::new(move |_| {
        let (print, pieces) = form.with(|form| form.check(units)).ok()?;
        Some(store.shop.with(|shop| suggested_batch(shop, run, &print, pieces)))
    });
    view! {
        <Page title=Signal::derive(|| i18n::pot_what_print_takes().to_owned()) up=Route::Pot(PotRoute::NewForRun(run)) class="form">
            <p class="quiet-line">{title}" · "{i18n::location(location)}" · "{ink}</p>
            <p id="run-pieces">{if left > 0 { i18n::pot_print_left(i18n::pieces(left)) } else { i18n::pot_print_none_left().into() }}</p>
            <form on:submit=move |event| submit.submit(store, &event, Route::Pot(PotRoute::NewForRun(run))) novalidate=true>
                {submit.draft_line()}
                <div class="field-pair">
                    <Field label=i18n::volume_width() kind=Kind::Length unit=i18n::unit_length() bound=bound!(form.ink.width) problems/>
                    <Field label=i18n::volume_height() kind=Kind::Length unit=i18n::unit_length() bound=bound!(form.ink.height) problems/>
                </div>
                <div class="field-pair">
                    <Field label=i18n::volume_coverage() kind=Kind::Decimal unit=i18n::emulsion_percent() bound=bound!(form.ink.coverage) problems hint=i18n::pot_coverage_hint()/>
                    <Field label=i18n::item_hits() kind=Kind::Whole bound=bound!(form.ink.hits) problems/>
                </div>
                <div class="field-pair">
                    <Field label=i18n::pot_mesh_volume() kind=Kind::Decimal unit=i18n::volume_unit() bound=bound!(form.volume) problems hint=i18n::pot_mesh_volume_hint()/>
                    <Field label=i18n::pot_loss() kind=Kind::Decimal unit=i18n::emulsion_percent() bound=bound!(form.loss) problems hint=i18n::pot_loss_hint()/>
                </div>
                <a class="button quiet pot-link" href=Route::Exposure(ExposureRoute::Volume).hash()>{i18n::pot_mesh_volume_link()}</a>
                <div class="field-pair">
                    <Field label=i18n::volume_transfer() kind=Kind::Decimal unit=i18n::emulsion_percent() bound=bound!(form.ink.transfer) problems hint=i18n::volume_transfer_hint()/>
                    <Field label=i18n::volume_density() kind=Kind::Decimal unit=i18n::volume_density_unit() bound=bound!(form.ink.density) problems/>
                </div>
                <section class="card" id="suggested" aria-live="polite">
                    {move || match batch.get() {
                        Some(batch) => super::batch_suggestion::suggestion(&batch, super::ledger_text::scale_step(store)).into_any(),
                        None => view! { <p class="muted">{i18n::pot_print_wait()}</p> }.into_any(),
                    }}
                </section>
                <SaveBar problems busy=submit.busy/>
            </form>
        </Page>
    }.into_any()
}
