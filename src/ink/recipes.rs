//! The recipes, to be found by name.

use crate::parts::{Icon, Swatch};
use crate::place::{InkPlace, Place};
use crate::words;
use lastpull_core::heat::ink_key;
use lastpull_core::ink::{InkShelf, RecipeLine};
use leptos::prelude::*;

/// Fewer than these are seen at a glance, and nothing to search among.
const SEARCHABLE: usize = 9;

/// All recipes, or those that are called so.
#[component]
pub fn Recipes(shelf: Memo<InkShelf>) -> impl IntoView {
    let search = RwSignal::new(String::new());
    let searchable = Memo::new(move |_| shelf.with(|shelf| shelf.recipes.len() >= SEARCHABLE));
    view! {
        <section class="ink-section" id="recipes">
            <h2>{words::ink_recipes()}</h2>
            {move || searchable.get().then(|| view! {
                <div class="search">
                    <label class="visually-hidden" for="search">{words::ink_search()}</label>
                    <input id="search" type="search" placeholder=words::ink_search() prop:value=search on:input=move |event| search.set(event_target_value(&event))/>
                </div>
            })}
            {move || {
                let wanted = ink_key(&search.get());
                let rows = shelf.with(|shelf| {
                    shelf.recipes.iter().filter(|recipe| ink_key(&recipe.name).contains(&wanted)).map(row).collect_view()
                });
                if rows.is_empty() {
                    let text = if wanted.is_empty() { words::ink_no_recipes() } else { words::ink_none_found() };
                    return view! { <p class="quiet-line">{text}</p> }.into_any();
                }
                view! { <ul class="menu">{rows}</ul> }.into_any()
            }}
        </section>
    }
}

fn row(recipe: &RecipeLine) -> AnyView {
    let what = match (&recipe.latest, &recipe.approved) {
        (None, _) => words::ink_no_revision().to_owned(),
        (Some(latest), None) => words::ink_revision_name(latest),
        (Some(_), Some((approved, _))) => words::ink_revision_name(approved),
    };
    // A newer one that nobody said yes to must not pass for the approved one.
    let newer = match (&recipe.latest, &recipe.approved) {
        (Some(latest), Some((approved, _))) if latest.id != approved.id => Some(words::ink_revision_name(latest)),
        _ => None,
    };
    let mark = recipe.latest.as_ref().map(|_| {
        if recipe.approved.is_some() {
            view! { <span class="badge good"><Icon name="check"/>{words::ink_approved()}</span> }
        } else {
            view! { <span class="muted ink-mark">{words::ink_not_approved()}</span> }
        }
    });
    view! {
        <li>
            <a class="menu-row ink-row" href=Place::Ink(InkPlace::Recipe(recipe.id)).hash()>
                <Swatch colour=recipe.colour/>
                <span class="row-words">
                    <strong>{recipe.name.clone()}</strong>
                    <span class="muted">{what}</span>
                    {newer.map(|newer| view! { <span class="ink-newer">{words::ink_newer_short(newer)}</span> })}
                </span>
                <span class="ink-end">{mark}</span>
            </a>
        </li>
    }
    .into_any()
}
