//! The shop's own limit of a fabric, and the way back to the cautious figure.

use super::HeatPlace;
use super::limits::{beside, of_number};
use crate::parts::{Field, Icon, Kind, NotHere, Page, SaveBar, Sending, TextArea, bound};
use crate::place::Place;
use crate::store::Store;
use crate::words;
use lastpull_core::heat::{FabricLimitForm, HeatFact, LimitKind, LimitOrigin, fabric_limit};
use lastpull_core::journal::Fact;
use leptos::prelude::*;
use uuid::Uuid;

const LIST: Place = Place::Heat(HeatPlace::Limits);

/// The form.
#[component]
pub fn LimitForm(number: u8) -> impl IntoView {
    let store = Store::from_context();
    let Some((fabric, kind)) = of_number(number) else { return view! { <NotHere/> }.into_any() };
    let units = words::units();
    let limit = Memo::new(move |_| store.shop.with(|shop| fabric_limit(shop, fabric, kind)));
    let form = RwSignal::new(limit.with_untracked(|limit| FabricLimitForm::of(limit.as_ref(), units)));
    let sending = Sending::new(Box::new(move || {
        form.with(|form| form.check(fabric, kind, units)).map(|fact| vec![(Uuid::nil(), Fact::Heat(fact))])
    }));
    let problems = sending.problems;
    let own = limit.with_untracked(|limit| limit.as_ref().is_some_and(|limit| limit.origin == LimitOrigin::Shop));
    let back = move |_| {
        let was = store.shop.with_untracked(|shop| shop.heat.own_limit(fabric, kind).cloned());
        let fact = |temperature, note| Fact::Heat(HeatFact::FabricLimit { fabric, kind, temperature, note });
        store.record(Uuid::nil(), fact(None, String::new()));
        let undo = was.map(|own| (Uuid::nil(), fact(Some(own.temperature), own.note)));
        store.tell_with_undo(words::limit_is_default(), undo.into_iter().collect());
        LIST.go();
    };
    let title = words::limit_edit_title(words::fabric(fabric), words::limit_kind(kind));
    view! {
        <Page title=Signal::derive(move || title.clone()) up=LIST class="form">
            {move || limit.with(|limit| limit.as_ref().map(|limit| view! {
                <div class="heat-stands">
                    <p>{words::limit_stands()}" "<strong>{words::temperature(limit.temperature)}</strong>", "{words::limit_origin(limit.origin)}"."</p>
                    {(kind == LimitKind::DyeMigration).then(|| view! { <p class="quiet-line">{words::limit_dye_hint()}</p> })}
                    {beside(limit).into_iter().map(|line| view! { <p class="quiet-line">{line}</p> }).collect::<Vec<_>>()}
                </div>
            }))}
            <form on:submit=move |event| sending.send(store, &event, LIST) novalidate=true>
                <Field name="temperature" label=words::limit_temperature() kind=Kind::Decimal unit=words::unit_temperature() bound=bound(form, |f| &mut f.temperature) problems hint=words::limit_temperature_hint()/>
                <TextArea name="note" label=words::limit_note() bound=bound(form, |f| &mut f.note) problems/>
                <p class="quiet-line">{words::limit_note_hint()}</p>
                <p class="caution"><Icon name="heat"/>{words::limit_caution()}</p>
                <SaveBar problems busy=sending.busy/>
            </form>
            {own.then(|| view! { <button type="button" class="button" id="limit-back" on:click=back>{words::limit_back()}</button> })}
        </Page>
    }.into_any()
}
