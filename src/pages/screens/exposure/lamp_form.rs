//! The form of a lamp.

use crate::components::{Choice, Icon, NotHere, Page};
use crate::forms::{Field, FormSubmit, Kind, SaveBar, bound, delete, set};
use crate::i18n;
use crate::platform::ids;
use crate::route::{ExposureRoute, Route};
use crate::store::Store;
use lastpull_core::facts::Fact;
use lastpull_core::ids::Subject;
use lastpull_core::screen::{LampForm, LampKind, StencilFact};
use leptos::prelude::*;

const EQUIPMENT: Route = Route::Exposure(ExposureRoute::Equipment);

/// A new lamp, or the fields of an existing one.
#[component]
pub fn LampPage(#[prop(into)] lamp: Option<Subject>) -> impl IntoView {
    let store = Store::from_context();
    let units = i18n::units();
    let before = lamp.and_then(|id| {
        store.shop.with_untracked(|shop| shop.exposure_log.lamp(id).filter(|lamp| !lamp.deleted).cloned())
    });
    if lamp.is_some() && before.is_none() {
        return view! { <NotHere/> }.into_any();
    }
    let form = RwSignal::new(before.as_ref().map(|lamp| LampForm::of(lamp, units)).unwrap_or_default());
    // One id per form, so that saving twice creates one record.
    let id = lamp.unwrap_or_else(ids::new_id);
    let name_before = before.as_ref().map(|lamp| lamp.name.clone()).unwrap_or_default();
    let submit = FormSubmit::new(Box::new(move || {
        let fields = form.with(|form| form.check(units, before.as_ref()))?;
        Ok(set(id, fields, |fields| Fact::Stencil(StencilFact::Lamp(fields))))
    }))
    .with_draft(form);
    let problems = submit.problems;
    let kind = Memo::new(move |_| form.with(|form| form.kind));
    let kinds = LampKind::ALL.into_iter().map(|kind| (kind, i18n::lamp_kind_name(kind).to_owned())).collect();
    let title = if lamp.is_some() { i18n::exposure_lamp() } else { i18n::lamp_new() };
    let distance = move |hint: &'static str| {
        view! { <Field label=i18n::lamp_distance() kind=Kind::Length unit=i18n::unit_length() bound=bound!(form.distance) problems hint/> }.into_any()
    };
    view! {
        <Page title=Signal::derive(move || title.to_owned()) up=EQUIPMENT class="form">
            <form on:submit=move |event| submit.submit(store, &event, EQUIPMENT) novalidate=true>
                {submit.draft_line()}
                <Field label=i18n::lamp_name() kind=Kind::Words bound=bound!(form.name) problems hint=i18n::lamp_name_hint()/>
                <Choice label=i18n::lamp_kind() name="kind" options=kinds value=kind on_pick=Callback::new(move |kind| form.update(|form| form.kind = kind))/>
                {move || match kind.get() {
                    LampKind::Contact => view! { <p class="quiet-line">{i18n::exposure_no_law_contact()}</p> }.into_any(),
                    LampKind::Tubes => distance(i18n::exposure_no_law_tubes()),
                    LampKind::Panel => distance(i18n::exposure_no_law_panel()),
                    LampKind::Point => distance(i18n::lamp_distance_hint()),
                }}
                <p class="caution"><Icon name="alert"/>{i18n::exposure_caution()}</p>
                <p class="caution"><Icon name="alert"/>{i18n::caution_lamp_power()}</p>
                <SaveBar problems busy=submit.busy/>
            </form>
            {lamp.map(|_| view! {
                <div class="button-row">
                    <button type="button" class="button with-icon danger" id="delete" on:click=move |_| delete(store, id, i18n::lamp_deleted(name_before.clone()), EQUIPMENT)><Icon name="bin"/>{i18n::delete()}</button>
                </div>
            })}
        </Page>
    }.into_any()
}
