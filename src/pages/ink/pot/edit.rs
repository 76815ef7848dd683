//! A pot's label text, tare and capacity.

use crate::components::{NotHere, Page};
use crate::forms::{Field, FormSubmit, Kind, SaveBar, TextArea, bound};
use crate::i18n::{self, Term};
use crate::pages::help::help;
use crate::platform::ids;
use crate::route::{PotRoute, Route};
use crate::store::Store;
use lastpull_core::ids::Subject;
use lastpull_core::ink::PotForm;
use leptos::prelude::*;

/// The form.
#[component]
pub fn EditPotPage(id: Subject) -> impl IntoView {
    let store = Store::from_context();
    let units = i18n::units();
    let typed = store.shop.with_untracked(|shop| {
        let pot = shop.ink.pot(id).filter(|pot| !pot.deleted)?;
        Some((PotForm::to_edit(shop, id, units)?, pot.size.is_some()))
    });
    let Some((typed, sized)) = typed else { return view! { <NotHere/> }.into_any() };
    let form = RwSignal::new(typed);
    let submit = FormSubmit::new(Box::new(move || {
        let by = store.operator();
        store.shop.with_untracked(|shop| form.with(|form| form.edit(shop, id, by.as_deref(), units, ids::new_id)))
    }))
    .with_draft(form);
    let problems = submit.problems;
    let up = Route::Pot(PotRoute::Pot(id));
    view! {
        <Page title=Signal::derive(|| i18n::pot_edit().to_owned()) up class="form">
            <form on:submit=move |event| submit.submit(store, &event, up) novalidate=true>
                {submit.draft_line()}
                <Field label=i18n::pot_name() kind=Kind::Words bound=bound!(form.name) problems/>
                <div class="field-pair">
                    <Field label=i18n::pot_tare() kind=Kind::Decimal unit=i18n::unit_weight() bound=bound!(form.tare) problems hint=i18n::pot_tare_hint() help=help(Term::Tare)/>
                    <Field label=i18n::pot_capacity() kind=Kind::Decimal unit=i18n::unit_weight() bound=bound!(form.capacity) problems hint=i18n::pot_capacity_hint()/>
                </div>
                {sized.then(|| view! { <Field label=i18n::pot_size() kind=Kind::Decimal unit=i18n::unit_weight() bound=bound!(form.size) problems/> })}
                <TextArea label=i18n::note() bound=bound!(form.note) problems/>
                <SaveBar problems busy=submit.busy/>
            </form>
        </Page>
    }.into_any()
}
