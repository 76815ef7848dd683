//! One line of a pot's ledger: the composition after it, its note, its reading, its photos.

use super::event_note::{EventDetails, line_of};
use super::ledger_text::{event_text, scale_step, signed_weight, undo_event};
use crate::components::{Icon, NotHere, Page};
use crate::i18n;
use crate::route::{PotRoute, Route};
use crate::store::Store;
use lastpull_core::ids::Subject;
use lastpull_core::ink::LedgerLine;
use lastpull_core::units::Grams;
use leptos::prelude::*;

/// The page.
#[component]
pub fn PotEventPage(pot: Subject, event: Subject) -> impl IntoView {
    let store = Store::from_context();
    let line = line_of(store, pot, event);
    let here = Memo::new(move |_| line.with(Option::is_some));
    move || {
        if !here.get() {
            return view! { <NotHere/> }.into_any();
        }
        let step = scale_step(store);
        let title = Signal::derive(move || {
            line.with(|line| line.as_ref().map(|line| event_text(line, step)).unwrap_or_default())
        });
        view! {
            <Page title up=Route::Pot(PotRoute::Pot(pot)) class="pot-event">
                {move || line.get().map(|line| event_summary(store, &line, step))}
                <EventDetails pot event line/>
            </Page>
        }
        .into_any()
    }
}

fn event_summary(store: Store, line: &LedgerLine, step: Grams) -> AnyView {
    let (event, deleted) = (line.event, line.deleted);
    let names = store.shop.with_untracked(|shop| {
        let name = |id: Subject| shop.ink.component(id).map(|component| component.name.clone()).unwrap_or_default();
        let percents = i18n::pot_percents(&line.percentages.iter().map(|(_, percent)| *percent).collect::<Vec<_>>());
        line.percentages.iter().map(|(id, _)| name(*id)).zip(percents).collect::<Vec<_>>()
    });
    let by = [Some(i18n::moment(line.at)), line.by.clone()].into_iter().flatten().collect::<Vec<_>>().join(" · ");
    let (icon, do_it) = if deleted { ("repeat", i18n::pot_record_again()) } else { ("undo", i18n::pot_take_back()) };
    view! {
        <section class="pot-holds" class:deleted=deleted>
            {signed_weight(line, step).map(|grams| view! { <p class="pot-total"><strong>{grams}</strong></p> })}
            <p class="quiet-line">{by}</p>
            {deleted.then(|| view! { <p><span class="badge tight"><Icon name="undo"/>{i18n::pot_was_taken_back()}</span></p> })}
            <h2>{i18n::pot_held_after(i18n::pot_weight(line.total, step))}</h2>
            <ul class="pot-percents">
                {names.into_iter().map(|(name, percent)| view! { <li><span>{name}</span><strong>{percent}</strong></li> }).collect::<Vec<_>>()}
            </ul>
            <button type="button" class="button with-icon" id="take-back" on:click=move |_| undo_event(store, event, deleted)><Icon name=icon/>{do_it}</button>
        </section>
    }.into_any()
}
