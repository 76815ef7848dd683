//! The shelf of inks: recipes, components, stock, and what the day needs of them.

mod component;
mod component_form;
mod home;
mod make_again;
mod make_size;
mod needs;
mod part_rows;
mod parts_table;
mod picker;
mod place;
mod pots;
mod recipe;
mod recipe_form;
mod recipes;
mod revisions;
mod run_ink;
mod scale;
mod shopping;
mod stock;
mod stock_sheet;
mod sum;

pub use place::InkPlace;
pub use run_ink::RunInkRows;

use leptos::prelude::*;
use crate::live::Drawn;
use crate::live::view;

/// Draws one of these screens.
pub fn screen(place: InkPlace) -> Drawn {
    match place {
        InkPlace::Home => view! { <home::InkHome/> },
        InkPlace::NewRecipe => view! { <recipe_form::NewRecipe run=None/> },
        InkPlace::NewRecipeFor(run) => view! { <recipe_form::NewRecipe run/> },
        InkPlace::EditRecipe(id) => view! { <recipe_form::EditRecipe id/> },
        InkPlace::Revise(id) => view! { <recipe_form::Revise id/> },
        InkPlace::Recipe(id) => view! { <recipe::RecipeScreen id/> },
        InkPlace::MakeAgain(id) => view! { <make_again::MakeAgainScreen id/> },
        InkPlace::Stock => view! { <stock::StockScreen/> },
        InkPlace::NewComponent => view! { <component_form::ComponentFormScreen component=None/> },
        InkPlace::Component(id) => view! { <component::ComponentScreen id/> },
        InkPlace::EditComponent(id) => view! { <component_form::ComponentFormScreen component=id/> },
        InkPlace::Scale => view! { <scale::ScaleScreen/> },
    }
}
