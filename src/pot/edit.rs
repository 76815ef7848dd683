//! What is written on a pot, what it weighs empty, how much it holds.

use crate::parts::{Field, Kind, NotHere, Page, SaveBar, Sending, TextArea, bound};
use crate::place::{Place, PotPlace};
use crate::platform::ids;
use crate::store::Store;
use crate::words;
use lastpull_core::ink::PotForm;
use lastpull_core::journal::Subject;
use leptos::prelude::*;

/// The form.
#[component]
pub fn EditScreen(id: Subject) -> impl IntoView {
    let store = Store::from_context();
    let units = words::units();
    let typed = store.shop.with_untracked(|shop| {
        let pot = shop.ink.pot(id).filter(|pot| !pot.deleted)?;
        Some((PotForm::to_edit(shop, id, units)?, pot.size.is_some()))
    });
    let Some((typed, sized)) = typed else { return view! { <NotHere/> }.into_any() };
    let form = RwSignal::new(typed);
    let sending = Sending::new(Box::new(move || {
        let by = store.crew();
        store.shop.with_untracked(|shop| form.with(|form| form.edit(shop, id, by.as_deref(), units, ids::new_id)))
    }));
    let problems = sending.problems;
    let up = Place::Pot(PotPlace::Pot(id));
    view! {
        <Page title=Signal::derive(|| words::pot_edit().to_owned()) up class="form">
            <form on:submit=move |event| sending.send(store, &event, up) novalidate=true>
                <Field name="name" label=words::pot_name() kind=Kind::Words bound=bound(form, |f| &mut f.name) problems/>
                <div class="field-pair">
                    <Field name="tare" label=words::pot_tare() kind=Kind::Decimal unit=words::unit_weight() bound=bound(form, |f| &mut f.tare) problems hint=words::pot_tare_hint()/>
                    <Field name="capacity" label=words::pot_capacity() kind=Kind::Decimal unit=words::unit_weight() bound=bound(form, |f| &mut f.capacity) problems hint=words::pot_capacity_hint()/>
                </div>
                {sized.then(|| view! { <Field name="size" label=words::pot_size() kind=Kind::Decimal unit=words::unit_weight() bound=bound(form, |f| &mut f.size) problems/> })}
                <TextArea name="note" label=words::note() bound=bound(form, |f| &mut f.note) problems/>
                <SaveBar problems busy=sending.busy/>
            </form>
        </Page>
    }.into_any()
}
