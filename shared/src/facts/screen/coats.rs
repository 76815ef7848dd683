//! Coats of emulsion on a screen. **Frozen** as [`crate::facts::Fact`] is.

use crate::codec::Encode;
use serde::{Deserialize, Serialize};

/// Number of coats of emulsion on each side. **Frozen**: it is stored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, Encode)]
#[serde(deny_unknown_fields)]
pub struct Coats {
    /// On the print side, which touches the garment.
    pub print: u8,
    /// On the squeegee side.
    pub squeegee: u8,
}

impl Coats {
    /// Most coats on one side.
    pub(crate) const MAX: u8 = 9;

    /// Whether every value is within its limits; see [`crate::journal::JournalFact::in_bounds`].
    pub(crate) fn in_bounds(self) -> bool {
        self.print <= Self::MAX && self.squeegee <= Self::MAX
    }
}
