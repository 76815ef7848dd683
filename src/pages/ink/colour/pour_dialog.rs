//! Recording an advised addition: as advised, or as the scale showed.

use super::advice::amounts_text;
use crate::components::Sheet;
use crate::forms::{Bound, Facts, Field, FormSubmit, Kind};
use crate::i18n;
use crate::platform::ids;
use crate::store::Store;
use lastpull_core::facts::Fact;
use lastpull_core::ids::Subject;
use lastpull_core::ink::{AddWay, POURED_CORRECTION_FIELDS, PouredCorrectionForm, poured_in};
use leptos::prelude::*;

/// The dialog. `poured` is called once it is recorded.
#[component]
pub fn PourSheet(
    pot: Subject,
    way: AddWay,
    before: f64,
    poured: Callback<()>,
    on_close: Callback<()>,
) -> impl IntoView {
    let store = Store::from_context();
    let units = i18n::units();
    let note = i18n::colour_pour_note(i18n::colour_de(before), i18n::colour_de(way.after.de2000));
    let form = RwSignal::new(PouredCorrectionForm::of(&way, note, units));
    let submit =
        FormSubmit::new(Box::new(move || form.with(|form| form.check(pot, store.operator().as_deref(), units))));
    let problems = submit.problems;
    let names: Vec<(Subject, String)> = way.rows.iter().map(|row| (row.component, row.name.clone())).collect();
    let send = move |event: leptos::ev::SubmitEvent| {
        event.prevent_default();
        let Some(facts) = submit.validate() else { return };
        let name = |of: Subject| names.iter().find(|(id, _)| *id == of).map_or("", |(_, name)| name);
        let said = i18n::colour_poured_notice(amounts_text(
            poured_in(&facts).into_iter().map(|(id, grams)| (grams, name(id))),
        ));
        let facts: Facts = facts.into_iter().map(|fact| (ids::new_id(), Fact::Ink(fact))).collect();
        let undo = facts.iter().map(|(id, _)| (*id, Fact::Deleted)).collect();
        let recorded = move || {
            store.notify_with_undo(said, undo);
            poured.run(());
        };
        submit.save(store, facts, Box::new(recorded));
    };
    let unit = i18n::unit_weight();
    let fields = way.rows.iter().zip(POURED_CORRECTION_FIELDS).enumerate().map(|(place, (row, name))| {
        let bound = Bound::new(
            name,
            form,
            move |form| form.rows.get(place).map(|row| row.1.clone()).unwrap_or_default(),
            move |form, typed| {
                if let Some(row) = form.rows.get_mut(place) {
                    row.1 = typed;
                }
            },
        );
        view! { <Field label=row.name.clone() kind=Kind::Decimal unit bound problems/> }
    });
    let fields = fields.collect_view();
    view! {
        <Sheet title=i18n::colour_pour_title() on_close>
            <form on:submit=send novalidate=true>
                <p>{i18n::colour_pour_hint()}</p>
                {fields}
                <button type="submit" class="button primary huge" id="poured" disabled=submit.busy>{i18n::colour_poured()}</button>
            </form>
        </Sheet>
    }
}
