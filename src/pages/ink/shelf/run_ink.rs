//! A run's ink beside its checks and after its last piece: its pot, its recipe, or what is still to be mixed.

use super::pot_row::pot_row;
use crate::components::MenuRow;
use crate::i18n;
use crate::route::{InkRoute, PotRoute, Route};
use crate::store::Store;
use lastpull_core::ids::RunId;
use lastpull_core::ink::{RunInk, run_ink};
use lastpull_core::units::Grams;
use leptos::prelude::*;

/// The pots of its ink. Renders nothing for a shop that does not mix. `after` the run, the pots are weighed
/// back.
#[component]
pub fn RunInkRows(id: RunId, after: bool) -> impl IntoView {
    let store = Store::from_context();
    let ink = Memo::new(move |_| store.shop.with(|shop| run_ink(shop, id)));
    move || {
        ink.with(|ink| {
            let ink = ink.as_ref()?;
            let pots = ink.pots.iter().map(|pot| view! { <li>{pot_row(pot)}</li> }).collect_view();
            if after && pots.is_empty() {
                return None;
            }
            Some(view! {
                <section class="ink-run" id="run-ink">
                    {after.then(|| view! { <p class="quiet-line">{i18n::ink_weigh_back()}</p> })}
                    <ul class="menu">{pots}{(!after).then(|| to_do(ink)).flatten()}</ul>
                </section>
            })
        })
    }
}

/// What is still to be mixed, or the recipe if no pot holds any.
fn to_do(ink: &RunInk) -> Option<AnyView> {
    let more =
        ink.need.as_ref().and_then(|need| need.to_mix.filter(|grams| grams.is_positive()).map(|more| (need.run, more)));
    let weighing = ink.pots.iter().any(|pot| pot.stage == lastpull_core::ink::PotStage::Weighing);
    match (more, ink.recipe) {
        (Some((run, more)), _) if !weighing => Some(row(Route::Pot(PotRoute::NewForRun(run)), &ink.ink, Some(more))),
        (_, Some(recipe)) if ink.pots.is_empty() => Some(row(Route::Ink(InkRoute::Recipe(recipe)), &ink.ink, None)),
        _ => None,
    }
}

fn row(route: Route, ink: &str, more: Option<Grams>) -> AnyView {
    let words = more.map_or_else(|| i18n::ink_its_recipe().to_owned(), |more| i18n::ink_to_mix(i18n::weight(more)));
    view! {
        <MenuRow href=route.hash() icon="ink" title=ink.to_owned() text=words/>
    }
    .into_any()
}
