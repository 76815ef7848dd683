//! The form of an ink's data sheet.

use crate::components::{NotHere, Page};
use crate::forms::{Field, FormSubmit, Kind, SaveBar, bound, delete, set};
use crate::i18n::{self, Term};
use crate::pages::help::help;
use crate::platform::ids;
use crate::route::{HeatRoute, Route};
use crate::store::Store;
use lastpull_core::facts::Fact;
use lastpull_core::heat::{HeatFact, SheetForm};
use lastpull_core::ids::RunId;
use lastpull_core::ids::Subject;
use leptos::prelude::*;

const LIST: Route = Route::Heat(HeatRoute::Sheets);

/// A new data sheet, empty or of a run's ink; or the fields of an existing one.
#[component]
pub fn InkSheetFormPage(#[prop(into)] sheet: Option<Subject>, #[prop(into)] run: Option<RunId>) -> impl IntoView {
    let store = Store::from_context();
    let before =
        sheet.and_then(|id| store.shop.with_untracked(|shop| shop.heat.sheet(id).filter(|one| !one.deleted).cloned()));
    if sheet.is_some() && before.is_none() {
        return view! { <NotHere/> }.into_any();
    }
    let units = i18n::units();
    let ink = run.and_then(|run| store.shop.with_untracked(|shop| shop.run(run).map(|run| run.ink.clone())));
    let start = before.as_ref().map_or_else(
        || SheetForm { ink: ink.unwrap_or_default(), ..SheetForm::default() },
        |sheet| SheetForm::of(sheet, units),
    );
    let form = RwSignal::new(start);
    let id = sheet.unwrap_or_else(ids::new_id);
    let name = before.as_ref().map(|sheet| sheet.ink.clone());
    let submit = FormSubmit::new(Box::new(move || {
        let fields = form.with(|form| form.check(units, before.as_ref()))?;
        Ok(set(id, fields, |fields| Fact::Heat(HeatFact::SheetSet(fields))))
    }))
    .with_draft(form);
    let problems = submit.problems;
    let title = if sheet.is_some() { i18n::sheet_edit() } else { i18n::sheet_new() };
    // Return to the run that linked here.
    let then = run.map_or(LIST, Route::Run);
    view! {
        <Page title=Signal::derive(move || title.to_owned()) up=then class="form">
            <form on:submit=move |event| submit.submit(store, &event, then) novalidate=true>
                {submit.draft_line()}
                <Field label=i18n::item_ink() kind=Kind::Words bound=bound!(form.ink) problems hint=i18n::sheet_ink_hint()/>
                <div class="field-pair">
                    <Field label=i18n::sheet_cure() kind=Kind::Decimal unit=i18n::unit_temperature() bound=bound!(form.cure) problems hint=i18n::sheet_cure_hint() help=help(Term::Cure)/>
                    <Field label=i18n::sheet_hold() kind=Kind::Decimal unit=i18n::unit_seconds() bound=bound!(form.hold) problems hint=i18n::sheet_hold_hint() help=help(Term::HoldTime)/>
                </div>
                <div class="field-pair">
                    <Field label=i18n::sheet_flash() kind=Kind::Decimal unit=i18n::unit_temperature() bound=bound!(form.flash) problems/>
                    <Field label=i18n::sheet_highest() kind=Kind::Decimal unit=i18n::unit_temperature() bound=bound!(form.highest) problems/>
                </div>
                <Field label=i18n::sheet_source() kind=Kind::Words bound=bound!(form.source) problems hint=i18n::sheet_source_hint()/>
                <Field label=i18n::sheet_day() kind=Kind::Day bound=bound!(form.source_day) problems/>
                <p class="quiet-line">{i18n::sheet_water_based()}</p>
                <p class="quiet-line">{i18n::heat_no_promise()}</p>
                <SaveBar problems busy=submit.busy/>
            </form>
            {name.map(|name| view! {
                <button type="button" class="button danger" id="delete" on:click=move |_| delete(store, id, i18n::sheet_deleted(name.clone()), LIST)>{i18n::delete()}</button>
            })}
        </Page>
    }.into_any()
}
