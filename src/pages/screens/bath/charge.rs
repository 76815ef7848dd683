//! Recording or correcting a charge of the reclaim bath.

use crate::components::{Icon, Sheet};
use crate::forms::{CrewPicker, Draft, Field, Kind, bound, submit_dialog};
use crate::i18n;
use crate::platform::ids;
use crate::store::Store;
use lastpull_core::facts::Fact;
use lastpull_core::form::Problems;
use lastpull_core::ids::Subject;
use lastpull_core::screen::{BathView, ChargeForm, ChargeRow};
use leptos::prelude::*;

/// The dialog of an existing charge, or of a new one.
#[component]
pub fn ChargeSheet(charge: Option<Subject>, bath: Memo<BathView>, close: Callback<()>) -> impl IntoView {
    let store = Store::from_context();
    let before: Option<ChargeRow> = charge.and_then(|id| {
        bath.with_untracked(|bath| bath.charge.iter().chain(&bath.before).find(|row| row.id == id).cloned())
    });
    let form = RwSignal::new(before.as_ref().map_or_else(ChargeForm::default, |row| ChargeForm {
        chemistry: row.chemistry.clone(),
        by: row.by.clone().unwrap_or_default(),
    }));
    let draft = Draft::of_dialog(charge.map_or_else(|| "charge".to_owned(), |id| format!("charge-{id}"))).keep(form);
    let problems = RwSignal::new(Problems::new());
    // One id per dialog, so that pressing twice creates one record.
    let id = charge.unwrap_or_else(ids::new_id);
    let is_new = before.is_none();
    let check = move || {
        if is_new {
            form.update(|form| form.by = store.operator().unwrap_or_default());
        }
        form.with_untracked(ChargeForm::check)
    };
    let send = submit_dialog(problems, check, move |fact| {
        draft.saved();
        close.run(());
        let facts = vec![(id, Fact::Stencil(fact))];
        if is_new {
            store.record_new(facts, i18n::bath_charged());
        } else {
            store.record_all(facts);
        }
    });
    let delete = move |_| {
        close.run(());
        store.delete_with_undo(id, i18n::bath_charge_deleted());
    };
    let title = if is_new { i18n::bath_charge_title() } else { i18n::bath_charge_edit_title() };
    view! {
        <Sheet title on_close=close>
            <p class="caution"><Icon name="alert"/>{i18n::bath_caution()}</p>
            <form novalidate=true on:submit=send>
                {draft.line()}
                <Field label=i18n::bath_chemistry() kind=Kind::Words bound=bound!(form.chemistry) problems hint=i18n::bath_chemistry_hint()/>
                {is_new.then(|| view! { <CrewPicker label=i18n::stencil_who() name="who"/> })}
                {is_new.then(|| view! { <p class="quiet-line">{i18n::bath_charge_text()}</p> })}
                <button type="submit" class="button primary huge" id="charge-now">{if is_new { i18n::bath_charge_save() } else { i18n::save() }}</button>
            </form>
            {(!is_new).then(|| view! {
                <button type="button" class="button quiet with-icon" id="delete-charge" on:click=delete><Icon name="bin"/>{i18n::delete()}</button>
            })}
        </Sheet>
    }
}
