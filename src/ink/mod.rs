//! The shelf of inks: recipes, components, stock, and what the day needs of them.

mod component;
mod component_form;
mod home;
mod needs;
mod part_rows;
mod picker;
mod place;
mod pots;
mod recipe_form;
mod recipes;
mod scale;
mod shopping;
mod stock;
mod stock_sheet;
mod sum;

pub use place::InkPlace;

use crate::live::{Drawn, nothing};
use crate::store::Store;
use lastpull_view::view;

/// Draws one of these screens.
pub fn screen(place: InkPlace) -> Drawn {
    match place {
        InkPlace::Home => view! { <home::InkHome/> },
        InkPlace::NewRecipe => view! { <recipe_form::NewRecipe run=None/> },
        InkPlace::NewRecipeFor(run) => view! { <recipe_form::NewRecipe run/> },
        InkPlace::EditRecipe(id) => view! { <recipe_form::EditRecipe id/> },
        InkPlace::Revise(id) => view! { <recipe_form::Revise id/> },
        InkPlace::Stock => view! { <stock::StockScreen/> },
        InkPlace::NewComponent => view! { <component_form::ComponentFormScreen component=None/> },
        InkPlace::Component(id) => view! { <component::ComponentScreen id/> },
        InkPlace::EditComponent(id) => view! { <component_form::ComponentFormScreen component=id/> },
        InkPlace::Scale => view! { <scale::ScaleScreen/> },
        _ => nothing(),
    }
}

/// Who works at this device, where that is known.
fn crew(store: Store) -> Option<String> {
    store.settings.with_untracked(|settings| settings.crew.clone())
}
