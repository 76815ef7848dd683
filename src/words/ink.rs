//! Words of the shelf of inks: recipes, components, stock.

use super::words;

words! {
    place_ink { "Ink", "Tintas" }
    ink_title { "Ink", "Tintas" }
    ink_empty_title { "No recipes yet", "Aún no hay recetas" }
    ink_empty_text {
        "Write down the first one, and the same colour can be made again.",
        "Anota la primera y podrás repetir el mismo color."
    }
    ink_new_recipe { "New recipe", "Nueva receta" }
}
