//! The recipes, with a search by name.

use crate::components::{Icon, Swatch};
use crate::i18n;
use crate::route::{InkRoute, Route};
use lastpull_core::heat::ink_key;
use lastpull_core::ink::{InkShelf, RecipeLine};
use leptos::prelude::*;

/// Number of recipes from which a search field is shown.
const SEARCHABLE: usize = 9;

/// All recipes, or those whose name matches.
#[component]
pub fn Recipes(shelf: Memo<InkShelf>) -> impl IntoView {
    let search = RwSignal::new(String::new());
    let searchable = Memo::new(move |_| shelf.with(|shelf| shelf.recipes.len() >= SEARCHABLE));
    view! {
        <section class="ink-section" id="recipes">
            <h2>{i18n::ink_recipes()}</h2>
            {move || searchable.get().then(|| view! {
                <div class="search">
                    <label class="visually-hidden" for="search">{i18n::ink_search()}</label>
                    <input id="search" type="search" placeholder=i18n::ink_search() prop:value=search on:input=move |event| search.set(event_target_value(&event))/>
                </div>
            })}
            {move || {
                let wanted = ink_key(&search.get());
                let rows = shelf.with(|shelf| {
                    shelf.recipes.iter().filter(|recipe| ink_key(&recipe.name).contains(&wanted)).map(row).collect_view()
                });
                if rows.is_empty() {
                    let text = if wanted.is_empty() { i18n::ink_no_recipes() } else { i18n::ink_none_found() };
                    return view! { <p class="quiet-line">{text}</p> }.into_any();
                }
                view! { <ul class="menu">{rows}</ul> }.into_any()
            }}
        </section>
    }
}

fn row(recipe: &RecipeLine) -> AnyView {
    let what = match (&recipe.latest, &recipe.approved) {
        (None, _) => i18n::ink_no_revision().to_owned(),
        (Some(latest), None) => i18n::ink_revision_name(latest),
        (Some(_), Some((approved, _))) => i18n::ink_revision_name(approved),
    };
    // A newer revision without approval must not be taken for the approved one.
    let newer = match (&recipe.latest, &recipe.approved) {
        (Some(latest), Some((approved, _))) if latest.id != approved.id => Some(i18n::ink_revision_name(latest)),
        _ => None,
    };
    let mark = recipe.latest.as_ref().map(|_| {
        if recipe.approved.is_some() {
            view! { <span class="badge good"><Icon name="check"/>{i18n::ink_approved()}</span> }
        } else {
            view! { <span class="muted ink-mark">{i18n::ink_not_approved()}</span> }
        }
    });
    view! {
        <li>
            <a class="menu-row ink-row" href=Route::Ink(InkRoute::Recipe(recipe.id)).hash()>
                <Swatch colour=recipe.colour/>
                <span class="row-words">
                    <strong>{recipe.name.clone()}</strong>
                    <span class="muted">{what}</span>
                    {newer.map(|newer| view! { <span class="ink-newer">{i18n::ink_newer_short(newer)}</span> })}
                </span>
                <span class="ink-end">{mark}</span>
            </a>
        </li>
    }
    .into_any()
}
