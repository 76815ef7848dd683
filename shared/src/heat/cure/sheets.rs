//! What the maker's sheet says of an ink.

use crate::heat::{InkSheet, ink_key};
use crate::ids::Subject;
use crate::shop::Shop;

/// The sheet of an ink by its name, whatever its case and spaces. Of several the one changed last.
pub fn sheet_for<'a>(shop: &'a Shop, ink: &str) -> Option<(Subject, &'a InkSheet)> {
    let key = ink_key(ink);
    if key.is_empty() {
        return None;
    }
    shop.heat
        .sheets()
        .filter(|(_, sheet)| !sheet.deleted && ink_key(&sheet.ink) == key)
        .max_by_key(|(id, sheet)| (sheet.touched, *id))
}
