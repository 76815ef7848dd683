//! The form of a component: what is on every tub first, its data sheet and how it is bought folded below.

use crate::components::{Choice, Icon, NotHere, Page, Switch};
use crate::forms::{Field, FormSubmit, Kind, SaveBar, TextArea, bound, delete, field_name, set};
use crate::i18n::{self, Term};
use crate::pages::help::help;
use crate::platform::ids;
use crate::route::{InkRoute, Route};
use crate::store::Store;
use lastpull_core::facts::Fact;
use lastpull_core::ids::Subject;
use lastpull_core::ink::{ComponentForm, ComponentKind, Hiding, InkFact};
use leptos::prelude::*;

const STOCK: Route = Route::Ink(InkRoute::Stock);
/// Initial value of the colour input.
pub(super) const GREY: &str = "#8a8a8a";

/// A new component, or the fields of an existing one.
#[component]
pub fn ComponentFormPage(#[prop(into)] component: Option<Subject>) -> impl IntoView {
    let store = Store::from_context();
    let units = i18n::units();
    let before = component.and_then(|id| {
        store.shop.with_untracked(|shop| shop.ink.component(id).filter(|found| !found.deleted).cloned())
    });
    if component.is_some() && before.is_none() {
        return view! { <NotHere/> }.into_any();
    }
    let form = RwSignal::new(before.as_ref().map(|found| ComponentForm::of(found, units)).unwrap_or_default());
    // One id per form, so that saving twice creates one record.
    let id = component.unwrap_or_else(ids::new_id);
    let submit = FormSubmit::new(Box::new(move || {
        let fields = store.shop.with(|shop| form.with(|form| form.check(shop, component, units)))?;
        Ok(set(id, fields, |fields| Fact::Ink(InkFact::ComponentSet(fields))))
    }))
    .with_draft(form);
    let problems = submit.problems;
    let title = if component.is_some() { i18n::ink_component_edit() } else { i18n::ink_component_new() };
    let up = component.map_or(STOCK, |id| Route::Ink(InkRoute::Component(id)));
    let name = before.map(|found| found.name);
    view! {
        <Page title=Signal::derive(move || title.to_owned()) up aside=help(Term::Component) class="form">
            <form on:submit=move |event| submit.submit(store, &event, Route::Ink(InkRoute::Component(id))) novalidate=true>
                {submit.draft_line()}
                <Field label=i18n::ink_component_name() kind=Kind::Words bound=bound!(form.name) problems hint=i18n::ink_component_name_hint()/>
                <KindAndColour form/>
                <Sheet form submit/>
                <Buying form submit/>
                <TextArea label=i18n::notes() bound=bound!(form.note) problems/>
                <SaveBar problems busy=submit.busy/>
            </form>
            {name.map(|name| view! {
                <div class="button-row">
                    <button type="button" class="button with-icon danger" id="delete" on:click=move |_| delete(store, id, i18n::ink_component_deleted(name.clone()), STOCK)>
                        <Icon name="bin"/>{i18n::delete()}
                    </button>
                </div>
            })}
        </Page>
    }.into_any()
}

/// Kind, opacity and colour.
#[component]
pub(super) fn KindAndColour(form: RwSignal<ComponentForm>) -> impl IntoView {
    let kinds = ComponentKind::ALL.map(|kind| (kind, i18n::ink_kind_name(kind).to_owned())).to_vec();
    let hidings =
        [Hiding::Transparent, Hiding::Opaque].map(|hiding| (hiding, i18n::ink_hiding_name(hiding).to_owned())).to_vec();
    let pick = Callback::new(move |kind: ComponentKind| {
        form.update(|form| {
            form.kind = kind;
            // A pigment has a colour; set the initial one.
            if kind == ComponentKind::Pigment && form.colour.is_empty() {
                form.colour = GREY.into();
            }
        });
    });
    let coloured = Memo::new(move |_| form.with(|form| !form.colour.is_empty()));
    let set = Callback::new(move |on: bool| {
        form.update(|form| form.colour = if on { GREY.into() } else { String::new() });
    });
    let additive = Memo::new(move |_| form.with(|form| form.kind == ComponentKind::Additive));
    let none = Signal::derive(lastpull_core::form::Problems::new);
    view! {
        <Choice label=i18n::ink_kind() name="kind" options=kinds value=Signal::derive(move || form.with(|form| form.kind)) on_pick=pick/>
        {move || additive.get().then(|| view! { <p class="caution"><Icon name="alert"/>{i18n::caution_additive()}</p> })}
        <div class="ink-colour-ask">
            <Switch id="coloured" label=i18n::ink_has_colour() value=coloured on_set=set/>
            {move || coloured.get().then(|| view! {
                <Field label=i18n::ink_colour() kind=Kind::Colour bound=bound!(form.colour) problems=none/>
            })}
        </div>
        <Choice label=i18n::ink_hiding() name="hiding" options=hidings value=Signal::derive(move || form.with(|form| form.hiding)) on_pick=Callback::new(move |hiding| form.update(|form| form.hiding = hiding))/>
    }
}

#[component]
fn Sheet(form: RwSignal<ComponentForm>, submit: FormSubmit) -> impl IntoView {
    let problems = submit.problems;
    let filled =
        form.with_untracked(|form| [&form.density, &form.most, &form.most_pigment].iter().any(|text| !text.is_empty()));
    let wrong = wrong(
        submit,
        [field_name!(ComponentForm.density), field_name!(ComponentForm.most), field_name!(ComponentForm.most_pigment)],
    );
    let is_base = Memo::new(move |_| form.with(|form| form.kind == ComponentKind::Base));
    view! {
        <details class="group screen-fold" open=move || filled || wrong.get()>
            <summary>{i18n::ink_sheet()}</summary>
            <div class="field-pair">
                <Field label=i18n::ink_density() kind=Kind::Decimal unit="g/cm³" bound=bound!(form.density) problems/>
                <Field label=i18n::ink_most() kind=Kind::Decimal unit="%" bound=bound!(form.most) problems/>
            </div>
            {move || is_base.get().then(|| view! {
                <Field label=i18n::ink_most_pigment() kind=Kind::Decimal unit="%" bound=bound!(form.most_pigment) problems hint=i18n::ink_most_pigment_hint()/>
            })}
        </details>
    }
}

#[component]
fn Buying(form: RwSignal<ComponentForm>, submit: FormSubmit) -> impl IntoView {
    let problems = submit.problems;
    let filled = form.with_untracked(|form| [&form.cost, &form.tub, &form.low_at].iter().any(|text| !text.is_empty()));
    let wrong = wrong(
        submit,
        [field_name!(ComponentForm.cost), field_name!(ComponentForm.tub), field_name!(ComponentForm.low_at)],
    );
    let currency = i18n::currency();
    let hint = if currency.is_empty() { i18n::ink_cost_hint() } else { "" };
    view! {
        <details class="group screen-fold" open=move || filled || wrong.get()>
            <summary>{i18n::ink_buying()}</summary>
            <div class="field-pair">
                <Field label=i18n::ink_tub() kind=Kind::Decimal unit=i18n::unit_weight() bound=bound!(form.tub) problems/>
                <Field label=i18n::ink_low_at() kind=Kind::Decimal unit=i18n::unit_weight() bound=bound!(form.low_at) problems/>
            </div>
            <Field label=i18n::ink_cost() kind=Kind::Decimal unit=currency bound=bound!(form.cost) problems hint/>
        </details>
    }
}

/// Whether any of these fields has a problem: then their section is opened.
fn wrong(submit: FormSubmit, fields: [&'static str; 3]) -> Memo<bool> {
    Memo::new(move |_| submit.problems.with(|problems| fields.iter().any(|field| problems.contains_key(field))))
}
