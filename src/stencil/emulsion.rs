//! An emulsion: a new one, or one to change or delete.

use super::StencilPlace;
use crate::parts::{Choice, Field, Icon, Kind, NotHere, Page, SaveBar, Sending, bound, delete, set};
use crate::place::Place;
use crate::platform::ids;
use crate::store::Store;
use crate::words;
use lastpull_core::journal::{Fact, Subject};
use lastpull_core::screen::{EmulsionForm, Family, StencilFact};
use leptos::prelude::*;

const KIT: Place = Place::Stencil(StencilPlace::Kit);

/// The form.
#[component]
pub fn EmulsionScreen(#[prop(into)] emulsion: Option<Subject>) -> impl IntoView {
    let store = Store::from_context();
    let before = emulsion.and_then(|id| {
        store.shop.with_untracked(|shop| shop.stencils.emulsion(id).filter(|emulsion| !emulsion.deleted).cloned())
    });
    if emulsion.is_some() && before.is_none() {
        return view! { <NotHere/> }.into_any();
    }
    let form = RwSignal::new(before.as_ref().map(EmulsionForm::of).unwrap_or_default());
    // One id a form: saving twice is still one.
    let id = emulsion.unwrap_or_else(ids::new_id);
    let name_before = before.as_ref().map(|emulsion| emulsion.name.clone()).unwrap_or_default();
    let sending = Sending::new(Box::new(move || {
        let fields = form.with(|form| form.check(before.as_ref()))?;
        Ok(set(id, fields, |fields| Fact::Stencil(StencilFact::Emulsion(fields))))
    }));
    let problems = sending.problems;
    let family = Signal::derive(move || form.with(|form| form.family));
    let families =
        Family::ALL.into_iter().map(|family| (Some(family), words::emulsion_family_name(family).to_owned())).collect();
    let title = if emulsion.is_some() { words::screen_emulsion() } else { words::emulsion_new() };
    view! {
        <Page title=Signal::derive(move || title.to_owned()) up=KIT class="form">
            <form on:submit=move |event| sending.send(store, &event, KIT) novalidate=true>
                <Field name="name" label=words::lamp_name() kind=Kind::Words bound=bound(form, |f| &mut f.name) problems hint=words::lamp_name_hint()/>
                <div class="stencil-hinted">
                    <Choice label=words::emulsion_family() name="family" options=families value=family on_pick=Callback::new(move |family| form.update(|form| form.family = family))/>
                    <p class="field-help">
                        {move || problems.with(|problems| problems.contains_key("family")).then(|| view! { <span class="problem" id="family-problem">{words::exposure_pick_one()}</span> " " })}
                        <span>{words::emulsion_family_hint()}</span>
                    </p>
                </div>
                <Field name="solids" label=words::emulsion_solids() kind=Kind::Whole unit=words::emulsion_percent() bound=bound(form, |f| &mut f.solids) problems hint=words::sheet_may_stay_empty()/>
                <SaveBar problems busy=sending.busy/>
            </form>
            {emulsion.map(|_| view! {
                <div class="button-row">
                    <button type="button" class="button with-icon danger" id="delete" on:click=move |_| delete(store, id, words::emulsion_deleted(name_before.clone()), KIT)><Icon name="bin"/>{words::delete()}</button>
                </div>
            })}
        </Page>
    }.into_any()
}
