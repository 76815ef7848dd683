//! The form of a trial.

use crate::components::{Choice, NotHere, Page};
use crate::forms::{Field, FormSubmit, Kind, SaveBar, TextArea, bound, delete, set};
use crate::i18n;
use crate::platform::ids;
use crate::route::{HeatRoute, Route};
use crate::store::Store;
use lastpull_core::facts::Fact;
use lastpull_core::heat::{HeatFact, Trial, TrialForm, TrialVerdict};
use lastpull_core::ids::RunId;
use lastpull_core::ids::Subject;
use lastpull_core::job::Fabric;
use leptos::prelude::*;

const LIST: Route = Route::Heat(HeatRoute::Trials);

/// A new trial, with a run's set-up if opened from a run; or a recorded one.
#[component]
pub fn TrialFormPage(#[prop(into)] trial: Option<Subject>, #[prop(into)] run: Option<RunId>) -> impl IntoView {
    let store = Store::from_context();
    let before: Option<Trial> =
        trial.and_then(|id| store.shop.with_untracked(|shop| shop.heat.trial(id).filter(|one| !one.deleted).cloned()));
    if trial.is_some() && before.is_none() {
        return view! { <NotHere/> }.into_any();
    }
    let units = i18n::units();
    let by = store.operator().unwrap_or_default();
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
    let submit = FormSubmit::new(Box::new(move || {
        let fields = form.with(|form| form.check(units, before.as_ref()))?;
        Ok(set(id, fields, |fields| Fact::Heat(HeatFact::TrialSet(fields))))
    }))
    .with_draft(form);
    let problems = submit.problems;
    let fabrics = Fabric::ALL.map(|fabric| (fabric, i18n::fabric(fabric).to_owned())).to_vec();
    let verdicts = [TrialVerdict::Open, TrialVerdict::Keep, TrialVerdict::Adjust, TrialVerdict::Reject];
    let verdicts = verdicts.map(|verdict| (verdict, i18n::trial_verdict_of(verdict).to_owned())).to_vec();
    let title = if trial.is_some() { i18n::trial_edit() } else { i18n::trial_new() };
    let up = run.map_or(LIST, Route::Run);
    view! {
        <Page title=Signal::derive(move || title.to_owned()) up class="form">
            <form on:submit=move |event| submit.submit(store, &event, up) novalidate=true>
                {submit.draft_line()}
                <Field label=i18n::item_ink() kind=Kind::Words bound=bound!(form.ink) problems/>
                <Choice label=i18n::lot_fabric() name="fabric" options=fabrics value=Signal::derive(move || form.with(|form| form.fabric)) on_pick=Callback::new(move |fabric| form.update(|form| form.fabric = fabric))/>
                <TextArea label=i18n::trial_outcome() bound=bound!(form.outcome) problems/>
                <Choice label=i18n::trial_verdict() name="verdict" options=verdicts value=Signal::derive(move || form.with(|form| form.verdict)) on_pick=Callback::new(move |verdict| form.update(|form| form.verdict = verdict))/>
                <fieldset class="group">
                    <legend>{i18n::run_group_heat()}</legend>
                    <div class="field-pair">
                        <Field label=i18n::item_dryer() kind=Kind::Decimal unit=i18n::unit_temperature() bound=bound!(form.dryer) problems/>
                        <Field label=i18n::item_dwell() kind=Kind::Decimal unit=i18n::unit_seconds() bound=bound!(form.dwell) problems/>
                    </div>
                    <div class="field-pair belt-pair">
                        <Field label=i18n::run_belt() kind=Kind::Decimal unit=i18n::unit_belt() bound=bound!(form.belt) problems/>
                        <Field label=i18n::item_passes() kind=Kind::Whole bound=bound!(form.passes) problems/>
                    </div>
                    <Field label=i18n::run_flash_seconds() kind=Kind::Decimal unit=i18n::unit_seconds() bound=bound!(form.flash) problems hint=i18n::trial_flash_hint()/>
                </fieldset>
                <fieldset class="group">
                    <legend>{i18n::run_group_print()}</legend>
                    <div class="field-pair">
                        <Field label=i18n::item_mesh() kind=Kind::Decimal unit=i18n::unit_mesh() bound=bound!(form.mesh) problems/>
                        <Field label=i18n::item_hits() kind=Kind::Whole bound=bound!(form.hits) problems/>
                    </div>
                </fieldset>
                <Field label=i18n::trial_by() kind=Kind::Words bound=bound!(form.by) problems/>
                <TextArea label=i18n::notes() bound=bound!(form.notes) problems/>
                <SaveBar problems busy=submit.busy/>
            </form>
            {trial.is_some().then(|| view! {
                <button type="button" class="button danger" id="delete" on:click=move |_| delete(store, id, i18n::trial_deleted(), LIST)>{i18n::delete()}</button>
            })}
        </Page>
    }.into_any()
}
