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

/// Draws one of these screens.
pub fn screen(place: InkPlace) -> AnyView {
    match place {
        InkPlace::Home => view! { <home::InkHome/> }.into_any(),
        InkPlace::NewRecipe => view! { <recipe_form::NewRecipe run=None/> }.into_any(),
        InkPlace::NewRecipeFor(run) => view! { <recipe_form::NewRecipe run/> }.into_any(),
        InkPlace::EditRecipe(id) => view! { <recipe_form::EditRecipe id/> }.into_any(),
        InkPlace::Revise(id) => view! { <recipe_form::Revise id/> }.into_any(),
        InkPlace::Recipe(id) => view! { <recipe::RecipeScreen id/> }.into_any(),
        InkPlace::MakeAgain(id) => view! { <make_again::MakeAgainScreen id/> }.into_any(),
        InkPlace::Stock => view! { <stock::StockScreen/> }.into_any(),
        InkPlace::NewComponent => view! { <component_form::ComponentFormScreen component=None/> }.into_any(),
        InkPlace::Component(id) => view! { <component::ComponentScreen id/> }.into_any(),
        InkPlace::EditComponent(id) => view! { <component_form::ComponentFormScreen component=id/> }.into_any(),
        InkPlace::Scale => view! { <scale::ScaleScreen/> }.into_any(),
    }
}
