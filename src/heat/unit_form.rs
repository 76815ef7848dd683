//! A dryer or flash unit.

use super::HeatPlace;
use crate::parts::{Choice, Field, Icon, Kind, NotHere, Page, SaveBar, Sending, TextArea, bound, delete, set};
use crate::place::Place;
use crate::platform::ids;
use crate::store::Store;
use crate::words;
use lastpull_core::heat::{HeatFact, HeaterForm, HeaterKind};
use lastpull_core::journal::{Fact, Subject};
use leptos::prelude::*;

const LIST: Place = Place::Heat(HeatPlace::Units);

/// A new unit, or one's fields.
#[component]
pub fn UnitForm(#[prop(into)] unit: Option<Subject>) -> impl IntoView {
    let store = Store::from_context();
    let before = unit
        .and_then(|id| store.shop.with_untracked(|shop| shop.heat.heater(id).filter(|unit| !unit.deleted).cloned()));
    if unit.is_some() && before.is_none() {
        return view! { <NotHere/> }.into_any();
    }
    let units = words::units();
    let form = RwSignal::new(before.as_ref().map(|unit| HeaterForm::of(unit, units)).unwrap_or_default());
    let id = unit.unwrap_or_else(ids::new_id);
    let name = before.as_ref().map(|unit| unit.name.clone());
    let sending = Sending::new(Box::new(move || {
        let fields = form.with(|form| form.check(units, before.as_ref()))?;
        Ok(set(id, fields, |fields| Fact::Heat(HeatFact::HeaterSet(fields))))
    }));
    let problems = sending.problems;
    let kind = Signal::derive(move || form.with(|form| form.kind));
    let kinds = [HeaterKind::Dryer, HeaterKind::Flash].map(|kind| (kind, words::unit_kind_of(kind).to_owned()));
    let title = if unit.is_some() { words::unit_edit() } else { words::unit_new() };
    view! {
        <Page title=Signal::derive(move || title.to_owned()) up=LIST class="form">
            <form on:submit=move |event| sending.send(store, &event, LIST) novalidate=true>
                <Choice label=words::unit_kind() name="unit-kind" options=kinds.to_vec() value=kind on_pick=Callback::new(move |kind| form.update(|form| form.kind = kind))/>
                <Field name="name" label=words::unit_name() kind=Kind::Words bound=bound(form, |f| &mut f.name) problems/>
                {move || (kind.get() == HeaterKind::Dryer).then(|| view! {
                    <Field name="heated_length" label=words::unit_heated() kind=Kind::Decimal unit=words::unit_length() bound=bound(form, |f| &mut f.heated_length) problems hint=words::unit_heated_hint()/>
                    <div class="field-pair">
                        <Field name="slowest" label=words::unit_slowest() kind=Kind::Decimal unit=words::unit_belt() bound=bound(form, |f| &mut f.slowest) problems/>
                        <Field name="fastest" label=words::unit_fastest() kind=Kind::Decimal unit=words::unit_belt() bound=bound(form, |f| &mut f.fastest) problems/>
                    </div>
                })}
                <TextArea name="notes" label=words::notes() bound=bound(form, |f| &mut f.notes) problems/>
                <p class="caution"><Icon name="heat"/>{words::heat_caution()}</p>
                <SaveBar problems busy=sending.busy/>
            </form>
            {name.map(|name| view! {
                <button type="button" class="button danger" id="delete" on:click=move |_| delete(store, id, words::unit_deleted(name.clone()), LIST)>{words::delete()}</button>
            })}
        </Page>
    }.into_any()
}
