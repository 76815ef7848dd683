//! The form of a dryer or flash unit.

use crate::components::{Choice, Icon, NotHere, Page};
use crate::forms::{Field, FormSubmit, Kind, SaveBar, TextArea, bound, delete, set};
use crate::i18n;
use crate::platform::ids;
use crate::route::{HeatRoute, Route};
use crate::store::Store;
use lastpull_core::facts::Fact;
use lastpull_core::heat::{HeatFact, HeaterForm, HeaterKind};
use lastpull_core::ids::Subject;
use leptos::prelude::*;

const LIST: Route = Route::Heat(HeatRoute::Dryers);

/// A new unit, or the fields of an existing one.
#[component]
pub fn DryerFormPage(#[prop(into)] unit: Option<Subject>) -> impl IntoView {
    let store = Store::from_context();
    let before = unit
        .and_then(|id| store.shop.with_untracked(|shop| shop.heat.heater(id).filter(|unit| !unit.deleted).cloned()));
    if unit.is_some() && before.is_none() {
        return view! { <NotHere/> }.into_any();
    }
    let units = i18n::units();
    let form = RwSignal::new(before.as_ref().map(|unit| HeaterForm::of(unit, units)).unwrap_or_default());
    let id = unit.unwrap_or_else(ids::new_id);
    let name = before.as_ref().map(|unit| unit.name.clone());
    let submit = FormSubmit::new(Box::new(move || {
        let fields = form.with(|form| form.check(units, before.as_ref()))?;
        Ok(set(id, fields, |fields| Fact::Heat(HeatFact::HeaterSet(fields))))
    }))
    .with_draft(form);
    let problems = submit.problems;
    let kind = Signal::derive(move || form.with(|form| form.kind));
    let kinds = [HeaterKind::Dryer, HeaterKind::Flash].map(|kind| (kind, i18n::unit_kind_of(kind).to_owned()));
    let title = if unit.is_some() { i18n::unit_edit() } else { i18n::unit_new() };
    view! {
        <Page title=Signal::derive(move || title.to_owned()) up=LIST class="form">
            <form on:submit=move |event| submit.submit(store, &event, LIST) novalidate=true>
                {submit.draft_line()}
                <Choice label=i18n::unit_kind() name="unit-kind" options=kinds.to_vec() value=kind on_pick=Callback::new(move |kind| form.update(|form| form.kind = kind))/>
                <Field label=i18n::unit_name() kind=Kind::Words bound=bound!(form.name) problems/>
                {move || (kind.get() == HeaterKind::Dryer).then(|| view! {
                    <Field label=i18n::unit_heated() kind=Kind::Length unit=i18n::unit_length() bound=bound!(form.heated_length) problems hint=i18n::unit_heated_hint()/>
                    <div class="field-pair belt-pair">
                        <Field label=i18n::unit_slowest() kind=Kind::Decimal unit=i18n::unit_belt() bound=bound!(form.slowest) problems/>
                        <Field label=i18n::unit_fastest() kind=Kind::Decimal unit=i18n::unit_belt() bound=bound!(form.fastest) problems/>
                    </div>
                })}
                <TextArea label=i18n::notes() bound=bound!(form.notes) problems/>
                <p class="caution"><Icon name="heat"/>{i18n::heat_caution()}</p>
                <p class="caution"><Icon name="alert"/>{i18n::caution_power_and_fumes()}</p>
                <SaveBar problems busy=submit.busy/>
            </form>
            {name.map(|name| view! {
                <button type="button" class="button danger" id="delete" on:click=move |_| delete(store, id, i18n::unit_deleted(name.clone()), LIST)>{i18n::delete()}</button>
            })}
        </Page>
    }.into_any()
}
