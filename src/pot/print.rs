//! What a print of a run takes: its art, its mesh, its strokes.

use crate::parts::{Field, Kind, NotHere, Page, SaveBar, Sending, bound};
use crate::place::{Place, PotPlace, StencilPlace};
use crate::store::Store;
use crate::words;
use lastpull_core::ink::{InkFact, PrintForm, suggested_batch};
use lastpull_core::job::RunId;
use lastpull_core::journal::Fact;
use leptos::prelude::*;

/// The form.
#[component]
pub fn PrintScreen(run: RunId) -> impl IntoView {
    let store = Store::from_context();
    let units = words::units();
    let named = store.shop.with_untracked(|shop| {
        shop.job_of(run).zip(shop.run(run)).map(|((_, job), run)| (job.title.clone(), run.location, run.ink.clone()))
    });
    let Some((title, location, ink)) = named else { return view! { <NotHere/> }.into_any() };
    let left = store.shop.with_untracked(|shop| shop.left_of(run));
    let form = RwSignal::new(store.shop.with_untracked(|shop| PrintForm::of(shop, run, units)));
    let sending = Sending::new(Box::new(move || {
        let (print, _) = form.with(|form| form.check(units))?;
        let same = store.shop.with_untracked(|shop| shop.ink.print(run) == Some(&print));
        Ok(if same { Vec::new() } else { vec![(run, Fact::Ink(InkFact::PrintSet(Some(print))))] })
    }));
    let problems = sending.problems;
    let batch = Memo::new(move |_| {
        let (print, pieces) = form.with(|form| form.check(units)).ok()?;
        Some(store.shop.with(|shop| suggested_batch(shop, run, &print, pieces)))
    });
    view! {
        <Page title=Signal::derive(|| words::pot_what_print_takes().to_owned()) up=Place::Pot(PotPlace::NewFor(run)) class="form">
            <p class="quiet-line">{title}" · "{words::location(location)}" · "{ink}</p>
            <p id="run-pieces">{if left > 0 { words::pot_print_left(words::pieces(left)) } else { words::pot_print_none_left().into() }}</p>
            <form on:submit=move |event| sending.send(store, &event, Place::Pot(PotPlace::NewFor(run))) novalidate=true>
                <div class="field-pair">
                    <Field name="width" label=words::volume_width() kind=Kind::Decimal unit=words::unit_length() bound=bound(form, |f| &mut f.ink.width) problems/>
                    <Field name="height" label=words::volume_height() kind=Kind::Decimal unit=words::unit_length() bound=bound(form, |f| &mut f.ink.height) problems/>
                </div>
                <div class="field-pair">
                    <Field name="coverage" label=words::volume_coverage() kind=Kind::Decimal unit=words::emulsion_percent() bound=bound(form, |f| &mut f.ink.coverage) problems hint=words::pot_coverage_hint()/>
                    <Field name="hits" label=words::item_hits() kind=Kind::Whole bound=bound(form, |f| &mut f.ink.hits) problems/>
                </div>
                <div class="field-pair">
                    <Field name="volume" label=words::pot_mesh_volume() kind=Kind::Decimal unit=words::volume_unit() bound=bound(form, |f| &mut f.volume) problems hint=words::pot_mesh_volume_hint()/>
                    <Field name="loss" label=words::pot_loss() kind=Kind::Decimal unit=words::emulsion_percent() bound=bound(form, |f| &mut f.loss) problems hint=words::pot_loss_hint()/>
                </div>
                <a class="button quiet pot-link" href=Place::Stencil(StencilPlace::Volume).hash()>{words::pot_mesh_volume_link()}</a>
                <div class="field-pair">
                    <Field name="transfer" label=words::volume_transfer() kind=Kind::Decimal unit=words::emulsion_percent() bound=bound(form, |f| &mut f.ink.transfer) problems hint=words::volume_transfer_hint()/>
                    <Field name="density" label=words::volume_density() kind=Kind::Decimal unit=words::volume_density_unit() bound=bound(form, |f| &mut f.ink.density) problems/>
                </div>
                <section class="card" id="suggested" aria-live="polite">
                    {move || match batch.get() {
                        Some(batch) => super::suggestion::suggestion(&batch, super::happened::scale_step(store)).into_any(),
                        None => view! { <p class="muted">{words::pot_print_wait()}</p> }.into_any(),
                    }}
                </section>
                <SaveBar problems busy=sending.busy/>
            </form>
        </Page>
    }.into_any()
}
