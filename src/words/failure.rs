//! Words of what fails on the press.

use super::words;

words! {
    failure_title { "What failed", "Qué falló" }
}
