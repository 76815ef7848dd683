//! The remedy for a failure.

use super::burn_again::ReplacementBurn;
use super::record::record;
use super::replacement::ReplacementPicker;
use super::step::Step;
use crate::components::Icon;
use crate::i18n;
use crate::store::Store;
use lastpull_core::failure::{FailureCard, Remedy, remedy_facts};
use lastpull_core::ids::Subject;
use leptos::prelude::*;

/// The remedies, quickest first, and the replacement screen.
#[component]
pub fn Remedies(id: Subject, card: Memo<Option<FailureCard>>, current: RwSignal<Option<Step>>) -> impl IntoView {
    let store = Store::from_context();
    let chosen = Memo::new(move |_| card.with(|card| card.as_ref().and_then(|card| card.failure.remedy)));
    let choosing = RwSignal::new(false);
    let pick = move |remedy: Remedy| {
        if remedy == Remedy::BurnAgain {
            choosing.set(true);
            return;
        }
        let by = store.operator();
        record(store, store.shop.with_untracked(|shop| remedy_facts(shop, id, remedy, by.as_deref())));
        if remedy != Remedy::Clean {
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
        {move || (chosen.get() == Some(Remedy::Clean)).then(|| view! { <p class="caution"><Icon name="alert"/>{i18n::failure_solvent()}</p> })}
        <ReplacementBurn card choosing/>
        {move || choosing.get().then(|| view! { <ReplacementPicker id choosing/> })}
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
