//! A lamp: a new one, or one to change or delete.

use super::StencilPlace;
use crate::parts::{Choice, Field, Icon, Kind, NotHere, Page, SaveBar, Sending, bound, delete, set};
use crate::place::Place;
use crate::platform::ids;
use crate::store::Store;
use crate::words;
use lastpull_core::journal::{Fact, Subject};
use lastpull_core::screen::{LampForm, LampKind, StencilFact};
use leptos::prelude::*;

const KIT: Place = Place::Stencil(StencilPlace::Kit);

/// The form.
#[component]
pub fn LampScreen(#[prop(into)] lamp: Option<Subject>) -> impl IntoView {
    let store = Store::from_context();
    let units = words::units();
    let before = lamp
        .and_then(|id| store.shop.with_untracked(|shop| shop.stencils.lamp(id).filter(|lamp| !lamp.deleted).cloned()));
    if lamp.is_some() && before.is_none() {
        return view! { <NotHere/> }.into_any();
    }
    let form = RwSignal::new(before.as_ref().map(|lamp| LampForm::of(lamp, units)).unwrap_or_default());
    // One id a form: saving twice is still one.
    let id = lamp.unwrap_or_else(ids::new_id);
    let name_before = before.as_ref().map(|lamp| lamp.name.clone()).unwrap_or_default();
    let sending = Sending::new(Box::new(move || {
        let fields = form.with(|form| form.check(units, before.as_ref()))?;
        Ok(set(id, fields, |fields| Fact::Stencil(StencilFact::Lamp(fields))))
    }));
    let problems = sending.problems;
    let kind = Memo::new(move |_| form.with(|form| form.kind));
    let kinds = LampKind::ALL.into_iter().map(|kind| (kind, words::lamp_kind_name(kind).to_owned())).collect();
    let title = if lamp.is_some() { words::exposure_lamp() } else { words::lamp_new() };
    view! {
        <Page title=Signal::derive(move || title.to_owned()) up=KIT class="form">
            <form on:submit=move |event| sending.send(store, &event, KIT) novalidate=true>
                <Field name="name" label=words::lamp_name() kind=Kind::Words bound=bound(form, |f| &mut f.name) problems hint=words::lamp_name_hint()/>
                <Choice label=words::lamp_kind() name="kind" options=kinds value=kind on_pick=Callback::new(move |kind| form.update(|form| form.kind = kind))/>
                {move || match kind.get() {
                    LampKind::Contact => view! { <p class="quiet-line">{words::exposure_no_law_contact()}</p> }.into_any(),
                    kind => {
                        let hint = match kind {
                            LampKind::Tubes => words::exposure_no_law_tubes(),
                            LampKind::Panel => words::exposure_no_law_panel(),
                            _ => words::lamp_distance_hint(),
                        };
                        view! { <Field name="distance" label=words::lamp_distance() kind=Kind::Decimal unit=words::unit_length() bound=bound(form, |f| &mut f.distance) problems hint/> }.into_any()
                    }
                }}
                <p class="caution"><Icon name="alert"/>{words::exposure_caution()}</p>
                <SaveBar problems busy=sending.busy/>
            </form>
            {lamp.map(|_| view! {
                <div class="button-row">
                    <button type="button" class="button with-icon danger" id="delete" on:click=move |_| delete(store, id, words::lamp_deleted(name_before.clone()), KIT)><Icon name="bin"/>{words::delete()}</button>
                </div>
            })}
        </Page>
    }.into_any()
}
