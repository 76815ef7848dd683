//! An ink's data sheet: the maker's temperatures and times.

use crate::heat::{InkSheet, ink_key};
use crate::ids::Subject;
use crate::shop::Shop;

/// The sheet of an ink, matched by [`ink_key`]; of several, the one changed last. `None` for an empty name.
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
