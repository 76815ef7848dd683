//! What can happen when stencils are exposed and reclaimed. **Frozen** as [`crate::journal::Fact`] is.

use serde::{Deserialize, Serialize};

/// Something about exposing stencils, or about the reclaim bath.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum StencilFact {
    /// The reclaim bath was charged anew: a new baseline begins.
    BathCharged,
}

impl StencilFact {
    /// As [`crate::journal::Fact::in_bounds`].
    pub(crate) fn in_bounds(&self) -> bool {
        match self {
            Self::BathCharged => true,
        }
    }
}
