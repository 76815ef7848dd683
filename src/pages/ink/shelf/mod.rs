//! Recipes, components, stock, and what the coming runs need.

mod approval;
mod batch_size;
mod component;
mod component_form;
mod component_picker;
mod home;
mod make_again;
mod needs;
mod part_rows;
mod parts_table;
mod pot_row;
mod recipe;
mod recipe_form;
mod recipe_list;
mod revisions;
mod run_ink;
mod scale_settings;
mod shopping_list;
mod stock;
mod stock_dialog;
mod sum_check;

pub use run_ink::RunInkRows;

use crate::route::InkRoute;
use leptos::prelude::*;

/// Draws the page of a route.
pub fn page(route: InkRoute) -> AnyView {
    match route {
        InkRoute::Home => view! { <home::InkHomePage/> }.into_any(),
        InkRoute::NewRecipe => view! { <recipe_form::NewRecipePage run=None/> }.into_any(),
        InkRoute::NewRecipeForRun(run) => view! { <recipe_form::NewRecipePage run/> }.into_any(),
        InkRoute::EditRecipe(id) => view! { <recipe_form::EditRecipePage id/> }.into_any(),
        InkRoute::Revise(id) => view! { <recipe_form::RevisePage id/> }.into_any(),
        InkRoute::Recipe(id) => view! { <recipe::RecipePage id/> }.into_any(),
        InkRoute::MakeAgain(id) => view! { <make_again::MakeAgainPage id/> }.into_any(),
        InkRoute::Stock => view! { <stock::StockPage/> }.into_any(),
        InkRoute::NewComponent => view! { <component_form::ComponentFormPage component=None/> }.into_any(),
        InkRoute::Component(id) => view! { <component::ComponentPage id/> }.into_any(),
        InkRoute::EditComponent(id) => view! { <component_form::ComponentFormPage component=id/> }.into_any(),
        InkRoute::Scale => view! { <scale_settings::ScaleSettingsPage/> }.into_any(),
    }
}
