//! When a run is finished.

use crate::i18n;

/// When it is out of the dryer, or printed if its time in the dryer is not known.
pub fn out_at(time: String, ends_at_press: bool) -> String {
    if ends_at_press { i18n::printed_at(time) } else { i18n::out_at(time) }
}
