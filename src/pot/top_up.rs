//! More of the same: what of each component makes a pot larger and leaves its colour.

use super::happened::scale_step;
use super::saved::told;
use crate::parts::{Bound, Field, Icon, Kind, Sheet};
use crate::platform::ids;
use crate::store::Store;
use crate::words;
use lastpull_core::ink::{InkFact, PourStep, after_addition, pot_state, top_up};
use lastpull_core::job::{FormProblem, Problems};
use lastpull_core::journal::{Fact, Subject};
use lastpull_core::quantity::Grams;
use leptos::prelude::*;

/// Up to how much, and what goes in.
#[component]
pub fn TopUpSheet(id: Subject, close: Callback<()>) -> impl IntoView {
    let store = Store::from_context();
    let step = scale_step(store);
    let holds = store.shop.with_untracked(|shop| pot_state(shop, id).contents.total());
    let text = RwSignal::new(String::new());
    let total = Memo::new(move |_| Grams::parse(&text.get(), holds, Grams::MOST, words::units()));
    let additions = Memo::new(move |_| match total.get() {
        Ok(total) => store.shop.with(|shop| top_up(shop, id, total)),
        Err(_) => Vec::new(),
    });
    let problems = Memo::new(move |_| {
        let mut problems = Problems::new();
        if let (Err(problem), false) = (total.get(), text.with(|text| text.trim().is_empty())) {
            problems.insert("total", FormProblem::Number(problem));
        }
        problems
    });
    let pour = move |_| {
        let by = store.crew();
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
        told(store, facts, words::pot_topped_said());
    };
    let bound = Bound { value: text.into(), set: Callback::new(move |typed| text.set(typed)) };
    view! {
        <Sheet title=words::pot_top_up() on_close=close>
            <p>{words::pot_top_up_text(words::pot_weight(holds, step))}</p>
            <Field name="total" label=words::pot_top_up_to() kind=Kind::Decimal unit=words::unit_weight() bound problems/>
            {move || {
                let additions = additions.get();
                if additions.is_empty() {
                    return ().into_any();
                }
                let after = store.shop.with(|shop| after_addition(shop, id, &additions));
                let name = |component: Subject| after.parts.iter().find(|part| part.component == component).map(|part| part.name.clone()).unwrap_or_default();
                view! {
                    <ul class="pot-percents" id="additions">
                        {additions.iter().map(|(component, grams)| view! { <li><span>{name(*component)}</span><strong>{words::pot_more(words::pot_weight(*grams, step))}</strong></li> }).collect::<Vec<_>>()}
                    </ul>
                    {after.spills.is_some().then(|| view! { <p class="caution"><Icon name="alert"/>{words::pot_will_spill(words::pot_weight(after.spills, step))}</p> })}
                    {after.lacks.iter().map(|(component, grams)| view! {
                        <p class="caution"><Icon name="alert"/>{words::pot_lacks_of(words::pot_weight(*grams, step), name(*component))}</p>
                    }).collect::<Vec<_>>()}
                    <div class="button-row"><button type="button" class="button primary" id="top-up-save" on:click=pour>{words::pot_all_poured()}</button></div>
                }.into_any()
            }}
        </Sheet>
    }
}
