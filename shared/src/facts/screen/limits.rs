//! After how many days a shop wants to be warned of a screen. **Frozen** as [`crate::facts::Fact`] is.

use crate::codec::Encode;
use serde::{Deserialize, Serialize};

/// Number of days after which the shop wants a warning. **Frozen**: a fact holds it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, Encode)]
#[serde(deny_unknown_fields)]
pub struct AgeLimits {
    /// Days a coated screen may wait for its exposure.
    pub coated: u16,
    /// Days a stencil may stay in the mesh after it was exposed.
    pub exposed: u16,
}

/// Four weeks coated, sixty days with a stencil: our own figures, until the shop enters those of its
/// emulsion's data sheet.
impl Default for AgeLimits {
    fn default() -> Self {
        Self { coated: 28, exposed: 60 }
    }
}

impl AgeLimits {
    /// The longest limit that can be entered, in days.
    pub(crate) const MAX: u16 = 2_000;

    /// Whether every value is within its limits; see [`crate::journal::JournalFact::in_bounds`].
    pub(crate) fn in_bounds(self) -> bool {
        (1..=Self::MAX).contains(&self.coated) && (1..=Self::MAX).contains(&self.exposed)
    }
}
