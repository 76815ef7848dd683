//! A lamp: a new one, or one to change or delete.

use super::StencilPlace;
use crate::kept::{Memo, RwSignal, Signal};
use crate::live::Drawn;
use crate::parts::{Choice, Field, Icon, Kind, NotHere, Page, SaveBar, bound};
use crate::place::Place;
use crate::platform::{ids, spawn_local};
use crate::store::Store;
use crate::words;
use lastpull_core::job::Problems;
use lastpull_core::journal::{Fact, Subject};
use lastpull_core::screen::{LampForm, LampKind, StencilFact};
use lastpull_view::view;
use leptos::prelude::*;

/// The form.
#[component(transparent)]
pub fn LampScreen(#[prop(into)] lamp: Option<Subject>) -> Drawn {
    let store = Store::from_context();
    let units = words::units();
    let before = lamp
        .and_then(|id| store.shop.with_untracked(|shop| shop.stencils.lamp(id).filter(|lamp| !lamp.deleted).cloned()));
    if lamp.is_some() && before.is_none() {
        return view! { <NotHere/> };
    }
    let form = RwSignal::new(before.as_ref().map(|lamp| LampForm::of(lamp, units)).unwrap_or_default());
    let problems = RwSignal::new(Problems::new());
    let busy = RwSignal::new(false);
    // One id a form: saving twice is still one.
    let id = lamp.unwrap_or_else(ids::new_id);
    let kept = StoredValue::new(before.clone());
    let check = move || form.with(|form| kept.with_value(|before| form.check(units, before.as_ref())));
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
                    let facts = vec![(id, Fact::Stencil(StencilFact::Lamp(fields.clone())))];
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
        let name = kept.with_value(|before| before.as_ref().map(|lamp| lamp.name.clone())).unwrap_or_default();
        store.record(id, Fact::Deleted);
        store.tell_with_undo(words::lamp_deleted(name), vec![(id, Fact::Restored)]);
        Place::Stencil(StencilPlace::Kit).go();
    };
    let kind = Memo::new(move |_| form.with(|form| form.kind));
    let kinds = LampKind::ALL.into_iter().map(|kind| (kind, words::lamp_kind_name(kind).to_owned())).collect();
    let title = if lamp.is_some() { words::lamp_edit() } else { words::lamp_new() };
    view! {
        <Page title=Signal::derive(move || title.to_owned()) up=Place::Stencil(StencilPlace::Kit) class="form">
            <form on:submit=save novalidate=true>
                <Field name="name" label=words::lamp_name() kind=Kind::Words bound=bound(form, |f| &mut f.name) problems hint=words::lamp_name_hint()/>
                <Choice label=words::lamp_kind() name="kind" options=kinds value=kind on_pick=Callback::new(move |kind| form.update(|form| form.kind = kind))/>
                {move || match kind.get() {
                    LampKind::Contact => view! { <p class="quiet-line">{words::exposure_no_law_contact()}</p> },
                    kind => {
                        let hint = match kind {
                            LampKind::Tubes => words::exposure_no_law_tubes(),
                            LampKind::Panel => words::exposure_no_law_panel(),
                            _ => words::lamp_distance_hint(),
                        };
                        view! { <Field name="distance" label=words::lamp_distance() kind=Kind::Decimal unit=words::unit_length() bound=bound(form, |f| &mut f.distance) problems hint/> }
                    }
                }}
                <p class="caution"><Icon name="alert"/>{words::exposure_caution()}</p>
                <SaveBar problems busy/>
            </form>
            {lamp.map(|_| view! {
                <div class="button-row">
                    <button type="button" class="button with-icon danger" id="delete" on:click=delete><Icon name="bin"/>{words::delete()}</button>
                </div>
            })}
        </Page>
    }
}
