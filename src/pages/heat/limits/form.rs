//! The shop's own heat limit of a fabric, and the reset to the cautious default.

use super::list::{beside, of_number};
use crate::components::{Icon, NotHere, Page};
use crate::forms::{Field, FormSubmit, Kind, SaveBar, TextArea, bound};
use crate::i18n;
use crate::route::{HeatRoute, Route};
use crate::store::Store;
use lastpull_core::facts::Fact;
use lastpull_core::heat::{FabricLimitForm, HeatFact, LimitKind, LimitOrigin, fabric_limit};
use lastpull_core::ids::SHOP;
use leptos::prelude::*;

const LIST: Route = Route::Heat(HeatRoute::Limits);

/// The form.
#[component]
pub fn LimitFormPage(number: u8) -> impl IntoView {
    let store = Store::from_context();
    let Some((fabric, kind)) = of_number(number) else { return view! { <NotHere/> }.into_any() };
    let units = i18n::units();
    let limit = Memo::new(move |_| store.shop.with(|shop| fabric_limit(shop, fabric, kind)));
    let form = RwSignal::new(limit.with_untracked(|limit| FabricLimitForm::of(limit.as_ref(), units)));
    let submit = FormSubmit::new(Box::new(move || {
        form.with(|form| form.check(fabric, kind, units)).map(|fact| vec![(SHOP, Fact::Heat(fact))])
    }))
    .with_draft(form);
    let problems = submit.problems;
    let own = limit.with_untracked(|limit| limit.as_ref().is_some_and(|limit| limit.origin == LimitOrigin::Shop));
    let back = move |_| {
        let was = store.shop.with_untracked(|shop| shop.heat.own_limit(fabric, kind).cloned());
        let fact = |temperature, note| Fact::Heat(HeatFact::FabricLimit { fabric, kind, temperature, note });
        let undo = was.map(|own| (SHOP, fact(Some(own.temperature), own.note)));
        let facts = vec![(SHOP, fact(None, String::new()))];
        store.record_with_undo(facts, undo.into_iter().collect(), i18n::limit_is_default());
        LIST.replace();
    };
    let title = i18n::limit_edit_title(i18n::fabric(fabric), i18n::limit_kind(kind));
    view! {
        <Page title=Signal::derive(move || title.clone()) up=LIST class="form">
            {move || limit.with(|limit| limit.as_ref().map(|limit| view! {
                <div class="heat-stands">
                    <p>{i18n::limit_stands()}" "<strong>{i18n::temperature(limit.temperature)}</strong>", "{i18n::limit_origin(limit.origin)}"."</p>
                    {(kind == LimitKind::DyeMigration).then(|| view! { <p class="quiet-line">{i18n::limit_dye_hint()}</p> })}
                    {beside(limit).into_iter().map(|line| view! { <p class="quiet-line">{line}</p> }).collect::<Vec<_>>()}
                </div>
            }))}
            <form on:submit=move |event| submit.submit(store, &event, LIST) novalidate=true>
                {submit.draft_line()}
                <Field label=i18n::limit_temperature() kind=Kind::Decimal unit=i18n::unit_temperature() bound=bound!(form.temperature) problems hint=i18n::limit_temperature_hint()/>
                <TextArea label=i18n::limit_note() bound=bound!(form.note) problems/>
                <p class="quiet-line">{i18n::limit_note_hint()}</p>
                <p class="caution"><Icon name="heat"/>{i18n::limit_caution()}</p>
                <SaveBar problems busy=submit.busy/>
            </form>
            {own.then(|| view! { <button type="button" class="button" id="limit-back" on:click=back>{i18n::limit_back()}</button> })}
        </Page>
    }.into_any()
}
