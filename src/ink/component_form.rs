//! A component's fields: what is on every tub first, its data sheet and how it is bought behind a touch.

use crate::parts::{Choice, Field, Icon, Kind, NotHere, Page, SaveBar, Sending, Switch, TextArea, bound, delete, set};
use crate::place::{InkPlace, Place};
use crate::platform::ids;
use crate::store::Store;
use crate::words;
use lastpull_core::ink::{ComponentForm, ComponentKind, Hiding, InkFact};
use lastpull_core::journal::{Fact, Subject};
use leptos::prelude::*;

const STOCK: Place = Place::Ink(InkPlace::Stock);
/// What a colour begins as, for the picker to start from.
pub(super) const GREY: &str = "#8a8a8a";

/// A new component, or one's fields.
#[component]
pub fn ComponentFormScreen(#[prop(into)] component: Option<Subject>) -> impl IntoView {
    let store = Store::from_context();
    let units = words::units();
    let before = component.and_then(|id| {
        store.shop.with_untracked(|shop| shop.ink.component(id).filter(|found| !found.deleted).cloned())
    });
    if component.is_some() && before.is_none() {
        return view! { <NotHere/> }.into_any();
    }
    let form = RwSignal::new(before.as_ref().map(|found| ComponentForm::of(found, units)).unwrap_or_default());
    // One id a form: saving twice is still one.
    let id = component.unwrap_or_else(ids::new_id);
    let sending = Sending::new(Box::new(move || {
        let fields = store.shop.with(|shop| form.with(|form| form.check(shop, component, units)))?;
        Ok(set(id, fields, |fields| Fact::Ink(InkFact::ComponentSet(fields))))
    }));
    let problems = sending.problems;
    let title = if component.is_some() { words::ink_component_edit() } else { words::ink_component_new() };
    let up = component.map_or(STOCK, |id| Place::Ink(InkPlace::Component(id)));
    let name = before.map(|found| found.name);
    view! {
        <Page title=Signal::derive(move || title.to_owned()) up class="form">
            <form on:submit=move |event| sending.send(store, &event, Place::Ink(InkPlace::Component(id))) novalidate=true>
                <Field name="name" label=words::ink_component_name() kind=Kind::Words bound=bound(form, |f| &mut f.name) problems hint=words::ink_component_name_hint()/>
                <KindAndColour form/>
                <Sheet form sending/>
                <Buying form sending/>
                <TextArea name="note" label=words::notes() bound=bound(form, |f| &mut f.note) problems/>
                <SaveBar problems busy=sending.busy/>
            </form>
            {name.map(|name| view! {
                <div class="button-row">
                    <button type="button" class="button with-icon danger" id="delete" on:click=move |_| delete(store, id, words::ink_component_deleted(name.clone()), STOCK)>
                        <Icon name="bin"/>{words::delete()}
                    </button>
                </div>
            })}
        </Page>
    }.into_any()
}

/// What it is for, whether it covers, and its colour.
#[component]
pub(super) fn KindAndColour(form: RwSignal<ComponentForm>) -> impl IntoView {
    let kinds = ComponentKind::ALL.map(|kind| (kind, words::ink_kind_name(kind).to_owned())).to_vec();
    let hidings = [Hiding::Transparent, Hiding::Opaque]
        .map(|hiding| (hiding, words::ink_hiding_name(hiding).to_owned()))
        .to_vec();
    let pick = Callback::new(move |kind: ComponentKind| {
        form.update(|form| {
            form.kind = kind;
            // A pigment has a colour; whoever names one wants to show which.
            if kind == ComponentKind::Pigment && form.colour.is_empty() {
                form.colour = GREY.into();
            }
        });
    });
    let coloured = Memo::new(move |_| form.with(|form| !form.colour.is_empty()));
    let set = Callback::new(move |on: bool| {
        form.update(|form| form.colour = if on { GREY.into() } else { String::new() });
    });
    let none = Signal::derive(lastpull_core::job::Problems::new);
    view! {
        <Choice label=words::ink_kind() name="kind" options=kinds value=Signal::derive(move || form.with(|form| form.kind)) on_pick=pick/>
        <div class="ink-colour-ask">
            <Switch id="coloured" label=words::ink_has_colour() value=coloured on_set=set/>
            {move || coloured.get().then(|| view! {
                <Field name="colour" label=words::ink_colour() kind=Kind::Colour bound=bound(form, |f| &mut f.colour) problems=none/>
            })}
        </div>
        <Choice label=words::ink_hiding() name="hiding" options=hidings value=Signal::derive(move || form.with(|form| form.hiding)) on_pick=Callback::new(move |hiding| form.update(|form| form.hiding = hiding))/>
    }
}

#[component]
fn Sheet(form: RwSignal<ComponentForm>, sending: Sending) -> impl IntoView {
    let problems = sending.problems;
    let filled =
        form.with_untracked(|form| [&form.density, &form.most, &form.most_pigment].iter().any(|text| !text.is_empty()));
    let wrong = wrong(sending, ["density", "most", "most_pigment"]);
    let is_base = Memo::new(move |_| form.with(|form| form.kind == ComponentKind::Base));
    view! {
        <details class="group screen-fold" open=move || filled || wrong.get()>
            <summary>{words::ink_sheet()}</summary>
            <div class="field-pair">
                <Field name="density" label=words::ink_density() kind=Kind::Decimal unit="g/cm³" bound=bound(form, |f| &mut f.density) problems/>
                <Field name="most" label=words::ink_most() kind=Kind::Decimal unit="%" bound=bound(form, |f| &mut f.most) problems/>
            </div>
            {move || is_base.get().then(|| view! {
                <Field name="most_pigment" label=words::ink_most_pigment() kind=Kind::Decimal unit="%" bound=bound(form, |f| &mut f.most_pigment) problems hint=words::ink_most_pigment_hint()/>
            })}
        </details>
    }
}

#[component]
fn Buying(form: RwSignal<ComponentForm>, sending: Sending) -> impl IntoView {
    let problems = sending.problems;
    let filled = form.with_untracked(|form| [&form.cost, &form.tub, &form.low_at].iter().any(|text| !text.is_empty()));
    let wrong = wrong(sending, ["cost", "tub", "low_at"]);
    view! {
        <details class="group screen-fold" open=move || filled || wrong.get()>
            <summary>{words::ink_buying()}</summary>
            <div class="field-pair">
                <Field name="tub" label=words::ink_tub() kind=Kind::Decimal unit=words::unit_weight() bound=bound(form, |f| &mut f.tub) problems/>
                <Field name="low_at" label=words::ink_low_at() kind=Kind::Decimal unit=words::unit_weight() bound=bound(form, |f| &mut f.low_at) problems/>
            </div>
            <Field name="cost" label=words::ink_cost() kind=Kind::Decimal bound=bound(form, |f| &mut f.cost) problems hint=words::ink_cost_hint()/>
        </details>
    }
}

/// Whether any of these fields is wrong: what hides it opens.
fn wrong(sending: Sending, fields: [&'static str; 3]) -> Memo<bool> {
    Memo::new(move |_| sending.problems.with(|problems| fields.iter().any(|field| problems.contains_key(field))))
}
