//! The published recipe of `ink_recipe_by_weight.csv`.

use super::TestShop;
use lastpull_core::ids::Subject;
use lastpull_core::ink::ComponentKind;

/// Yellow, white and clear at 20, 30 and 50 percent: the published recipe; and blue beside it.
pub struct Published {
    pub press: TestShop,
    pub yellow: Subject,
    pub white: Subject,
    pub clear: Subject,
    pub blue: Subject,
    pub recipe: Subject,
    pub first: Subject,
}

pub fn published() -> Published {
    let mut press = TestShop::new();
    let yellow = press.component("Yellow", ComponentKind::Pigment);
    let white = press.component("Tinting white", ComponentKind::Pigment);
    let clear = press.component("Mixing clear", ComponentKind::Base);
    let blue = press.component("Blue", ComponentKind::Pigment);
    let (recipe, first) = press.recipe("Brick", &[(yellow, 20.0), (white, 30.0), (clear, 50.0)]);
    Published { press, yellow, white, clear, blue, recipe, first }
}
