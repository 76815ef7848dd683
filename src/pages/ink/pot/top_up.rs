//! Topping up a pot: the amount of each component that makes it larger and keeps its colour.

use super::ledger_text::scale_step;
use crate::components::{Icon, Sheet};
use crate::forms::{Bound, Field, Kind};
use crate::i18n;
use crate::platform::ids;
use crate::store::Store;
use lastpull_core::facts::Fact;
use lastpull_core::form::{FormProblem, Problems};
use lastpull_core::ids::Subject;
use lastpull_core::ink::{InkFact, PourStep, after_addition, pot_state, top_up};
use lastpull_core::units::Grams;
use leptos::prelude::*;

/// The dialog: the target weight, and the amounts to add.
#[component]
pub fn TopUpSheet(id: Subject, close: Callback<()>) -> impl IntoView {
    let store = Store::from_context();
    let step = scale_step(store);
    let holds = store.shop.with_untracked(|shop| pot_state(shop, id).contents.total());
    let text = RwSignal::new(String::new());
    let bound = Bound::of("total", text);
    let total = Memo::new(move |_| Grams::parse(&text.get(), holds, Grams::MOST, i18n::units()));
    let additions = Memo::new(move |_| match total.get() {
        Ok(total) => store.shop.with(|shop| top_up(shop, id, total)),
        Err(_) => Vec::new(),
    });
    let problems = Memo::new(move |_| {
        let mut problems = Problems::new();
        if let (Err(problem), false) = (total.get(), text.with(|text| text.trim().is_empty())) {
            problems.insert(bound.name, FormProblem::Number(problem));
        }
        problems
    });
    let pour = move |_| {
        let by = store.operator();
        let facts = additions.with_untracked(|additions| {
            let poured = |(component, grams): &(Subject, Grams)| {
                let (note, by) = (String::new(), by.clone());
                let fact = InkFact::Poured {
                    pot: id,
                    component: *component,
                    grams: *grams,
                    step: PourStep::TopUp,
                    note,
                    reading: None,
                    by,
                };
                (ids::new_id(), Fact::Ink(fact))
            };
            additions.iter().map(poured).collect()
        });
        close.run(());
        store.record_new(facts, i18n::pot_topped_notice());
    };
    view! {
        <Sheet title=i18n::pot_top_up() on_close=close>
            <p>{i18n::pot_top_up_text(i18n::pot_weight(holds, step))}</p>
            <Field label=i18n::pot_top_up_to() kind=Kind::Decimal unit=i18n::unit_weight() bound problems/>
            {move || {
                let additions = additions.get();
                if additions.is_empty() {
                    return ().into_any();
                }
                let after = store.shop.with(|shop| after_addition(shop, id, &additions));
                let name = |component: Subject| after.parts.iter().find(|part| part.component == component).map(|part| part.name.clone()).unwrap_or_default();
                view! {
                    <ul class="pot-percents" id="additions">
                        {additions.iter().map(|(component, grams)| view! { <li><span>{name(*component)}</span><strong>{i18n::pot_more(i18n::pot_weight(*grams, step))}</strong></li> }).collect::<Vec<_>>()}
                    </ul>
                    {after.spills.is_positive().then(|| view! { <p class="caution"><Icon name="alert"/>{i18n::pot_will_spill(i18n::pot_weight(after.spills, step))}</p> })}
                    {after.lacks.iter().map(|(component, grams)| view! {
                        <p class="caution"><Icon name="alert"/>{i18n::pot_lacks_of(i18n::pot_weight(*grams, step), name(*component))}</p>
                    }).collect::<Vec<_>>()}
                    <div class="button-row"><button type="button" class="button primary" id="top-up-save" on:click=pour>{i18n::pot_all_poured()}</button></div>
                }.into_any()
            }}
        </Sheet>
    }
}
