//! Words of the shop's screens.

use super::words;

words! {
    screens_title { "Screens", "Pantallas" }
}
