//! The form of an emulsion.

use crate::components::{Choice, Icon, NotHere, Page};
use crate::forms::{Field, FormSubmit, Kind, SaveBar, bound, delete, field_name, set};
use crate::i18n::{self, Term};
use crate::pages::help::help;
use crate::platform::ids;
use crate::route::{ExposureRoute, Route};
use crate::store::Store;
use lastpull_core::facts::Fact;
use lastpull_core::ids::Subject;
use lastpull_core::screen::{EmulsionForm, Family, StencilFact};
use leptos::prelude::*;

const EQUIPMENT: Route = Route::Exposure(ExposureRoute::Equipment);

/// A new emulsion, or the fields of an existing one.
#[component]
pub fn EmulsionPage(#[prop(into)] emulsion: Option<Subject>) -> impl IntoView {
    let store = Store::from_context();
    let before = emulsion.and_then(|id| {
        store.shop.with_untracked(|shop| shop.exposure_log.emulsion(id).filter(|emulsion| !emulsion.deleted).cloned())
    });
    if emulsion.is_some() && before.is_none() {
        return view! { <NotHere/> }.into_any();
    }
    let form = RwSignal::new(before.as_ref().map(EmulsionForm::of).unwrap_or_default());
    // One id per form, so that saving twice creates one record.
    let id = emulsion.unwrap_or_else(ids::new_id);
    let name_before = before.as_ref().map(|emulsion| emulsion.name.clone()).unwrap_or_default();
    let submit = FormSubmit::new(Box::new(move || {
        let fields = form.with(|form| form.check(before.as_ref()))?;
        Ok(set(id, fields, |fields| Fact::Stencil(StencilFact::Emulsion(fields))))
    }))
    .with_draft(form);
    let problems = submit.problems;
    let family = Signal::derive(move || form.with(|form| form.family));
    let families =
        Family::ALL.into_iter().map(|family| (Some(family), i18n::emulsion_family_name(family).to_owned())).collect();
    let title = if emulsion.is_some() { i18n::screen_emulsion() } else { i18n::emulsion_new() };
    view! {
        <Page title=Signal::derive(move || title.to_owned()) up=EQUIPMENT aside=help(Term::EmulsionType) class="form">
            <form on:submit=move |event| submit.submit(store, &event, EQUIPMENT) novalidate=true>
                {submit.draft_line()}
                <Field label=i18n::lamp_name() kind=Kind::Words bound=bound!(form.name) problems hint=i18n::lamp_name_hint()/>
                <div class="stencil-hinted">
                    <Choice label=i18n::emulsion_family() name="family" options=families value=family on_pick=Callback::new(move |family| form.update(|form| form.family = family))/>
                    <p class="field-help">
                        {move || problems.with(|problems| problems.contains_key(field_name!(EmulsionForm.family))).then(|| view! { <span class="problem" id="family-problem">{i18n::exposure_pick_one()}</span> " " })}
                        <span>{i18n::emulsion_family_hint()}</span>
                    </p>
                </div>
                <Field label=i18n::emulsion_solids() kind=Kind::Whole unit=i18n::emulsion_percent() bound=bound!(form.solids) problems hint=i18n::sheet_may_stay_empty() help=help(Term::EmulsionSolids)/>
                <SaveBar problems busy=submit.busy/>
            </form>
            {emulsion.map(|_| view! {
                <div class="button-row">
                    <button type="button" class="button with-icon danger" id="delete" on:click=move |_| delete(store, id, i18n::emulsion_deleted(name_before.clone()), EQUIPMENT)><Icon name="bin"/>{i18n::delete()}</button>
                </div>
            })}
        </Page>
    }.into_any()
}
