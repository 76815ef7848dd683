//! An emulsion: a new one, or one to change or delete.

use super::StencilPlace;
use crate::kept::{RwSignal, Signal};
use crate::live::Drawn;
use crate::parts::{Choice, Field, Icon, Kind, NotHere, Page, SaveBar, bound};
use crate::place::Place;
use crate::platform::{ids, spawn_local};
use crate::store::Store;
use crate::words;
use lastpull_core::job::Problems;
use lastpull_core::journal::{Fact, Subject};
use lastpull_core::screen::{EmulsionForm, Family, StencilFact};
use lastpull_view::view;
use leptos::prelude::*;

/// The form.
#[component(transparent)]
pub fn EmulsionScreen(#[prop(into)] emulsion: Option<Subject>) -> Drawn {
    let store = Store::from_context();
    let before = emulsion.and_then(|id| {
        store.shop.with_untracked(|shop| shop.stencils.emulsion(id).filter(|emulsion| !emulsion.deleted).cloned())
    });
    if emulsion.is_some() && before.is_none() {
        return view! { <NotHere/> };
    }
    let form = RwSignal::new(before.as_ref().map(EmulsionForm::of).unwrap_or_default());
    let problems = RwSignal::new(Problems::new());
    let busy = RwSignal::new(false);
    // One id a form: saving twice is still one.
    let id = emulsion.unwrap_or_else(ids::new_id);
    let kept = StoredValue::new(before.clone());
    let check = move || form.with(|form| kept.with_value(|before| form.check(before.as_ref())));
    Effect::new(move || {
        let result = check();
        if problems.with_untracked(|problems| !problems.is_empty()) {
            problems.set(result.err().unwrap_or_default());
        }
    });
    let save = move |event: leptos::ev::SubmitEvent| {
        event.prevent_default();
        match check() {
            Err(found) => problems.set(found),
            Ok(fields) => {
                busy.set(true);
                spawn_local(async move {
                    let facts = vec![(id, Fact::Stencil(StencilFact::Emulsion(fields.clone())))];
                    let saved = fields.is_empty() || store.record_and_wait(facts).await;
                    busy.set(false);
                    if saved {
                        Place::Stencil(StencilPlace::Kit).go();
                    }
                });
            }
        }
    };
    let delete = move |_| {
        let name = kept.with_value(|before| before.as_ref().map(|emulsion| emulsion.name.clone())).unwrap_or_default();
        store.record(id, Fact::Deleted);
        store.tell_with_undo(words::emulsion_deleted(name), vec![(id, Fact::Restored)]);
        Place::Stencil(StencilPlace::Kit).go();
    };
    let family = Signal::derive(move || form.with(|form| form.family));
    let families =
        Family::ALL.into_iter().map(|family| (family, words::emulsion_family_name(family).to_owned())).collect();
    let title = if emulsion.is_some() { words::emulsion_edit() } else { words::emulsion_new() };
    view! {
        <Page title=Signal::derive(move || title.to_owned()) up=Place::Stencil(StencilPlace::Kit) class="form">
            <form on:submit=save novalidate=true>
                <Field name="name" label=words::lamp_name() kind=Kind::Words bound=bound(form, |f| &mut f.name) problems hint=words::lamp_name_hint()/>
                <div class="stencil-hinted">
                    <Choice label=words::emulsion_family() name="family" options=families value=family on_pick=Callback::new(move |family| form.update(|form| form.family = family))/>
                    <p class="field-help"><span>{words::emulsion_family_hint()}</span></p>
                </div>
                <Field name="solids" label=words::emulsion_solids() kind=Kind::Whole unit=words::emulsion_percent() bound=bound(form, |f| &mut f.solids) problems hint=words::emulsion_solids_hint()/>
                <SaveBar problems busy/>
            </form>
            {emulsion.map(|_| view! {
                <div class="button-row">
                    <button type="button" class="button with-icon danger" id="delete" on:click=delete><Icon name="bin"/>{words::delete()}</button>
                </div>
            })}
        </Page>
    }
}
