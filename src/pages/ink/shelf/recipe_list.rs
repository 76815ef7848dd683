//! The recipes, with a search by name.

use crate::components::{Icon, SearchField, Swatch, long_rows, searched};
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
    let search = searched();
    let searchable = Memo::new(move |_| shelf.with(|shelf| shelf.recipes.len() >= SEARCHABLE));
    view! {
        <section class="ink-section" id="recipes">
            <h2>{i18n::ink_recipes()}</h2>
            {move || searchable.get().then(|| view! { <SearchField label=i18n::ink_search() search/> })}
            {move || {
                let wanted = ink_key(&search.get());
                let found: Vec<RecipeLine> = shelf.with(|shelf| {
                    shelf.recipes.iter().filter(|recipe| ink_key(&recipe.name).contains(&wanted)).cloned().collect()
                });
                if found.is_empty() {
                    let text = if wanted.is_empty() { i18n::ink_no_recipes() } else { i18n::ink_none_found() };
                    return view! { <p class="quiet-line">{text}</p> }.into_any();
                }
                long_rows("recipes", "menu", found, row)
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
        <a class="menu-row ink-row" href=Route::Ink(InkRoute::Recipe(recipe.id)).hash()>
            <Swatch colour=recipe.colour/>
            <span class="row-words">
                <strong>{recipe.name.clone()}</strong>
                <span class="muted">{what}</span>
                {newer.map(|newer| view! { <span class="ink-newer">{i18n::ink_newer_short(newer)}</span> })}
            </span>
            <span class="ink-end">{mark}</span>
        </a>
    }
    .into_any()
}
