//! A trial.

use super::HeatPlace;
use crate::parts::{Choice, Field, Kind, NotHere, Page, SaveBar, Sending, TextArea, bound, delete, set};
use crate::place::Place;
use crate::platform::ids;
use crate::store::Store;
use crate::words;
use lastpull_core::heat::{HeatFact, Trial, TrialForm, TrialVerdict};
use lastpull_core::job::{Fabric, RunId};
use lastpull_core::journal::{Fact, Subject};
use leptos::prelude::*;

const LIST: Place = Place::Heat(HeatPlace::Trials);

/// A new trial, from a run's set-up where it begins there; or one that was noted.
#[component]
pub fn TrialFormScreen(#[prop(into)] trial: Option<Subject>, #[prop(into)] run: Option<RunId>) -> impl IntoView {
    let store = Store::from_context();
    let before: Option<Trial> =
        trial.and_then(|id| store.shop.with_untracked(|shop| shop.heat.trial(id).filter(|one| !one.deleted).cloned()));
    if trial.is_some() && before.is_none() {
        return view! { <NotHere/> }.into_any();
    }
    let units = words::units();
    let by = store.crew().unwrap_or_default();
    let from_run = || {
        run.and_then(|id| {
            store.shop.with_untracked(|shop| shop.run(id).map(|run| TrialForm::from_run(shop, run, units)))
        })
    };
    let start = before.as_ref().map_or_else(
        || TrialForm { by, ..from_run().unwrap_or_else(|| TrialForm::of(&Trial::default(), units)) },
        |trial| TrialForm::of(trial, units),
    );
    let form = RwSignal::new(start);
    let id = trial.unwrap_or_else(ids::new_id);
    let sending = Sending::new(Box::new(move || {
        let fields = form.with(|form| form.check(units, before.as_ref()))?;
        Ok(set(id, fields, |fields| Fact::Heat(HeatFact::TrialSet(fields))))
    }));
    let problems = sending.problems;
    let fabrics = Fabric::ALL.map(|fabric| (fabric, words::fabric(fabric).to_owned())).to_vec();
    let verdicts = [TrialVerdict::Open, TrialVerdict::Keep, TrialVerdict::Adjust, TrialVerdict::Reject];
    let verdicts = verdicts.map(|verdict| (verdict, words::trial_verdict_of(verdict).to_owned())).to_vec();
    let title = if trial.is_some() { words::trial_edit() } else { words::trial_new() };
    let up = run.map_or(LIST, Place::Run);
    view! {
        <Page title=Signal::derive(move || title.to_owned()) up class="form">
            <form on:submit=move |event| sending.send(store, &event, up) novalidate=true>
                <Field name="ink" label=words::item_ink() kind=Kind::Words bound=bound(form, |f| &mut f.ink) problems/>
                <Choice label=words::lot_fabric() name="fabric" options=fabrics value=Signal::derive(move || form.with(|form| form.fabric)) on_pick=Callback::new(move |fabric| form.update(|form| form.fabric = fabric))/>
                <TextArea name="outcome" label=words::trial_outcome() bound=bound(form, |f| &mut f.outcome) problems/>
                <Choice label=words::trial_verdict() name="verdict" options=verdicts value=Signal::derive(move || form.with(|form| form.verdict)) on_pick=Callback::new(move |verdict| form.update(|form| form.verdict = verdict))/>
                <fieldset class="group">
                    <legend>{words::run_group_heat()}</legend>
                    <div class="field-pair">
                        <Field name="dryer" label=words::item_dryer() kind=Kind::Decimal unit=words::unit_temperature() bound=bound(form, |f| &mut f.dryer) problems/>
                        <Field name="dwell" label=words::item_dwell() kind=Kind::Decimal unit=words::unit_seconds() bound=bound(form, |f| &mut f.dwell) problems/>
                    </div>
                    <div class="field-pair">
                        <Field name="belt" label=words::run_belt() kind=Kind::Decimal unit=words::unit_belt() bound=bound(form, |f| &mut f.belt) problems/>
                        <Field name="passes" label=words::item_passes() kind=Kind::Whole bound=bound(form, |f| &mut f.passes) problems/>
                    </div>
                    <Field name="flash" label=words::run_flash_seconds() kind=Kind::Decimal unit=words::unit_seconds() bound=bound(form, |f| &mut f.flash) problems hint=words::trial_flash_hint()/>
                </fieldset>
                <fieldset class="group">
                    <legend>{words::run_group_print()}</legend>
                    <div class="field-pair">
                        <Field name="mesh" label=words::item_mesh() kind=Kind::Decimal unit=words::unit_mesh() bound=bound(form, |f| &mut f.mesh) problems/>
                        <Field name="hits" label=words::item_hits() kind=Kind::Whole bound=bound(form, |f| &mut f.hits) problems/>
                    </div>
                </fieldset>
                <Field name="by" label=words::trial_by() kind=Kind::Words bound=bound(form, |f| &mut f.by) problems/>
                <TextArea name="notes" label=words::notes() bound=bound(form, |f| &mut f.notes) problems/>
                <SaveBar problems busy=sending.busy/>
            </form>
            {trial.is_some().then(|| view! {
                <button type="button" class="button danger" id="delete" on:click=move |_| delete(store, id, words::trial_deleted(), LIST)>{words::delete()}</button>
            })}
        </Page>
    }.into_any()
}
