//! Moving ink from pot to pot: splitting a pot, or combining two.

use super::consume::{WeighingMethod, Weight, WholeContentButton};
use crate::components::{Choice, Icon, Sheet};
use crate::forms::submit_dialog;
use crate::i18n;
use crate::platform::ids;
use crate::store::Store;
use lastpull_core::facts::Fact;
use lastpull_core::form::Problems;
use lastpull_core::ids::Subject;
use lastpull_core::ink::{InkFact, PotField, RemovalForm, ink_shelf};
use lastpull_core::units::Grams;
use leptos::prelude::*;

/// The dialog: ink moved to another pot, or from another pot if `into`.
#[component]
pub fn MoveSheet(id: Subject, into: bool, close: Callback<()>) -> impl IntoView {
    let store = Store::from_context();
    let step = super::ledger_text::scale_step(store);
    let others = store.shop.with_untracked(|shop| ink_shelf(shop).pots);
    let holding = |grams: Grams| !into || grams.is_positive();
    let mut options: Vec<(Option<Subject>, String)> = others
        .into_iter()
        .filter(|pot| pot.id != id && holding(pot.grams))
        .map(|pot| (Some(pot.id), format!("{} · {}", pot.name, i18n::pot_weight(pot.grams, step))))
        .collect();
    if !into {
        options.push((None, i18n::pot_new_one().to_owned()));
    }
    let none = options.is_empty();
    let other = RwSignal::new(options.first().and_then(|(id, _)| *id));
    let form = RwSignal::new(RemovalForm { total: true, ..RemovalForm::default() });
    let problems = RwSignal::new(Problems::new());
    let check = move || {
        let new = ids::new_id();
        let picked = other.get_untracked();
        let pots = if into { [picked.unwrap_or(new), id] } else { [id, picked.unwrap_or(new)] };
        store.shop.with_untracked(|shop| {
            let fact =
                form.with_untracked(|form| form.moved(shop, pots, store.operator().as_deref(), i18n::units()))?;
            let mut facts = Vec::new();
            if picked.is_none() {
                let pot = shop.ink.pot(id);
                let name = i18n::pot_split_name(pot.map(|pot| pot.name.clone()).unwrap_or_default());
                let fields = vec![PotField::Name(name), PotField::Run(pot.and_then(|pot| pot.run))];
                facts.push((new, Fact::Ink(InkFact::PotSet(fields))));
            }
            facts.push((ids::new_id(), Fact::Ink(fact)));
            Ok(facts)
        })
    };
    let send = submit_dialog(problems, check, move |facts| {
        close.run(());
        store.record_new(facts, i18n::pot_moved_notice());
    });
    let title = if into { i18n::pot_move_in() } else { i18n::pot_move_out() };
    let label = if into { i18n::pot_which_from() } else { i18n::pot_which_into() };
    let from = Signal::derive(move || if into { other.get() } else { Some(id) });
    view! {
        <Sheet title on_close=close>
            {if none {
                view! { <p>{i18n::pot_no_other()}</p> }.into_any()
            } else {
                view! {
                    <form on:submit=send novalidate=true>
                        <Choice label name="other" options value=other on_pick=Callback::new(move |picked| other.set(picked))/>
                        {into.then(|| view! { <p class="caution"><Icon name="alert"/>{i18n::pot_merge_caution()}</p> })}
                        <WeighingMethod form/>
                        {move || from.get().map(|from| view! { <Weight id=from form problems/><WholeContentButton id=from form/> })}
                        <div class="button-row"><button type="submit" class="button primary" id="move-save">{i18n::save()}</button></div>
                    </form>
                }.into_any()
            }}
        </Sheet>
    }
}
