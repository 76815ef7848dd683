//! Coats of emulsion on a screen. **Frozen** as [`crate::facts::Fact`] is.

use crate::codec::Encode;
use serde::{Deserialize, Serialize};

/// Coats of emulsion. **Frozen**: it is stored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, Encode)]
#[serde(deny_unknown_fields)]
pub struct Coats {
    /// On the side that lies on the garment.
    pub print: u8,
    /// On the side of the squeegee.
    pub squeegee: u8,
}

impl Coats {
    /// Most coats on a side.
    pub(crate) const MOST: u8 = 9;

    /// As [`crate::facts::Fact::in_bounds`].
    pub(crate) fn in_bounds(self) -> bool {
        self.print <= Self::MOST && self.squeegee <= Self::MOST
    }
}
