//! Words of dryers, cure and the room.

use super::words;

words! {
    heat_title { "Heat", "Calor" }
}
