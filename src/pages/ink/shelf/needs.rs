//! The ink of the coming runs: how much is still to be mixed, one tap from the weigh-in.

use crate::components::{GarmentChip, Icon};
use crate::i18n;
use crate::route::{InkRoute, JobsRoute, PotRoute, Route};
use lastpull_core::ids::Subject;
use lastpull_core::ink::{InkNeeded, InkShelf, PotStage};
use lastpull_core::units::Grams;
use leptos::prelude::*;

/// The inks that the coming runs need, in the order of the day.
#[component]
pub fn Needs(shelf: Memo<InkShelf>) -> impl IntoView {
    move || {
        let rows = shelf.with(|shelf| shelf.needed.iter().map(|need| row(need, shelf)).collect_view());
        (!rows.is_empty()).then(|| {
            view! {
                <section class="ink-section" id="needs">
                    <h2>{i18n::ink_needs()}</h2>
                    <ul class="ink-needs">{rows}</ul>
                </section>
            }
        })
    }
}

fn row(need: &InkNeeded, shelf: &InkShelf) -> AnyView {
    let ready = need.to_mix.is_some_and(|grams| !grams.is_positive());
    view! {
        <li class="ink-need" class:ready=ready>
            <a class="ink-need-what" href=JobsRoute::Job(need.job).hash()>
                <GarmentChip garment=need.garment_colour ink=need.ink_colour/>
                <span class="row-words">
                    <strong>{need.ink.clone()}</strong>
                    <span class="muted">{format!("{} · {}", need.title, i18n::pieces(need.pieces))}</span>
                </span>
            </a>
            {figure(need)}
            {action(need, weighing(need, shelf))}
        </li>
    }
    .into_any()
}

/// The pot that is being weighed in for it.
fn weighing(need: &InkNeeded, shelf: &InkShelf) -> Option<Subject> {
    let of_it = |pot: &&lastpull_core::ink::PotLine| pot.run == Some(need.run) && pot.stage == PotStage::Weighing;
    shelf.pots.iter().find(of_it).map(|pot| pot.id)
}

fn figure(need: &InkNeeded) -> AnyView {
    let held = need.in_pots.is_positive().then_some(need.in_pots);
    let (main, more) = match (need.recipe, need.grams, need.to_mix) {
        (None, _, _) => (i18n::ink_no_recipe().to_owned(), held.map(|held| i18n::ink_in_pots(i18n::weight(held)))),
        (_, None, _) | (_, _, None) => {
            (i18n::ink_no_print().to_owned(), held.map(|held| i18n::ink_in_pots(i18n::weight(held))))
        }
        (_, Some(all), Some(more)) if more.is_positive() => {
            (i18n::ink_to_mix(i18n::weight(more)), Some(needed(need, all, held)))
        }
        (_, Some(all), _) => {
            let words = i18n::ink_mixed(i18n::weight(all));
            return view! { <p class="ink-figure ready"><Icon name="check"/><span>{words}</span></p> }.into_any();
        }
    };
    let charge = need.used.filter(|_| need.recipe.is_some() && need.is_charge());
    let charge = charge.map(|used| i18n::ink_screen_decides(i18n::weight(used)));
    view! {
        <p class="ink-figure">
            <strong>{main}</strong>
            {more.map(|more| view! { <span class="muted">{more}</span> })}
            {charge.map(|charge| view! { <span class="muted">{charge}</span> })}
        </p>
    }
    .into_any()
}

fn needed(need: &InkNeeded, all: Grams, held: Option<Grams>) -> String {
    let words = match held {
        Some(held) => i18n::ink_needed_in_pots(i18n::weight(all), i18n::weight(held)),
        None => i18n::ink_needed(i18n::weight(all)),
    };
    if need.left_over.is_positive() {
        format!("{words} · {}", i18n::ink_left_over(i18n::weight(need.left_over)))
    } else {
        words
    }
}

/// The next action; `None` if it is mixed.
fn action(need: &InkNeeded, weighing: Option<Subject>) -> Option<AnyView> {
    let (route, icon, words) = match (weighing, need.recipe, need.to_mix) {
        (Some(pot), ..) => (Route::Pot(PotRoute::Pot(pot)), "go", i18n::ink_go_on()),
        (_, None, _) => (Route::Ink(InkRoute::NewRecipeForRun(need.run)), "edit", i18n::ink_write_recipe()),
        (_, _, None) => (Route::Pot(PotRoute::PrintUse(need.run)), "drop", i18n::work_it_out()),
        (_, _, Some(more)) if more.is_positive() => (Route::Pot(PotRoute::NewForRun(need.run)), "ink", i18n::ink_mix()),
        _ => return None,
    };
    let primary = weighing.is_some() || need.to_mix.is_some();
    Some(view! {
        <a class="button with-icon ink-act" class:primary=primary href=route.hash() aria-label=format!("{words}: {}", need.ink)>
            <Icon name=icon/>{words}
        </a>
    }.into_any())
}
