//! The remedy for a failure.

use super::burn_again::ReplacementBurn;
use super::record::record;
use super::replacement::ReplacementPicker;
use super::step::Step;
use crate::components::Icon;
use crate::i18n;
use crate::store::Store;
use lastpull_core::failure::{FailureCard, FailureKind, Remedy, remedy_facts};
use lastpull_core::ids::Subject;
use leptos::prelude::*;

/// The remedies, quickest first, and the replacement screen.
#[component]
pub fn Remedies(id: Subject, card: Memo<Option<FailureCard>>, current: RwSignal<Option<Step>>) -> impl IntoView {
    let store = Store::from_context();
    let chosen = Memo::new(move |_| card.with(|card| card.as_ref().and_then(|card| card.failure.remedy)));
    let ghost = Memo::new(move |_| {
        card.with(|card| card.as_ref().is_some_and(|card| card.failure.kind == Some(FailureKind::Ghost)))
    });
    let choosing = RwSignal::new(false);
    let pick = move |remedy: Remedy| {
        if remedy == Remedy::BurnAgain {
            choosing.set(true);
            return;
        }
        let by = store.operator();
        record(store, store.shop.with_untracked(|shop| remedy_facts(shop, id, remedy, by.as_deref())));
        // The caution of these two is shown below them.
        if !matches!(remedy, Remedy::Clean | Remedy::BlockOut) {
            card.with_untracked(|card| Step::Remedy.leave(card.as_ref(), current));
        }
    };
    view! {
        <div class="failure-remedies" role="group" aria-label=i18n::failure_step_remedy()>
            {Remedy::ALL.into_iter().map(|remedy| {
                let (name, hint) = i18n::failure_remedy(remedy);
                view! {
                    <button
                        type="button"
                        class="button failure-remedy"
                        data-remedy=format!("{remedy:?}")
                        aria-pressed=move || (chosen.get() == Some(remedy)).to_string()
                        on:click=move |_| pick(remedy)
                    >
                        <span>{name}</span><small>{hint}</small>
                    </button>
                }
            }).collect_view()}
        </div>
        {move || caution(chosen.get(), ghost.get()).map(|text| view! { <p class="caution"><Icon name="alert"/>{text}</p> })}
        <ReplacementBurn card choosing/>
        {move || choosing.get().then(|| view! { <ReplacementPicker id choosing/> })}
    }
}

/// The caution for a remedy. A ghost image is cleaned with a haze remover, which is no solvent.
fn caution(remedy: Option<Remedy>, ghost: bool) -> Option<&'static str> {
    match remedy? {
        Remedy::Clean if ghost => Some(i18n::caution_haze()),
        Remedy::Clean => Some(i18n::failure_solvent()),
        Remedy::BlockOut => Some(i18n::caution_block_out()),
        // Its steps have their own.
        Remedy::BurnAgain | Remedy::Tape => None,
    }
}

/// The chosen remedy, as text; `None` if none is chosen.
pub fn in_words(card: &FailureCard) -> Option<String> {
    let name = i18n::failure_remedy(card.failure.remedy?).0;
    Some(match &card.replacement {
        Some(replacement) => i18n::failure_on_screen(name, &replacement.label),
        None => name.to_owned(),
    })
}
