//! Why a piece was spoiled.

use crate::pack::Pack;
use serde::{Deserialize, Serialize};

/// Cause of a misprint. **Frozen**: names and order are stored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, Pack)]
#[serde(rename_all = "snake_case")]
pub enum MisprintCause {
    /// Printed in the wrong place.
    Placement,
    /// Colours or hits are out of register.
    Registration,
    /// A pinhole or spot in the stencil.
    Pinhole,
    /// Ink where a hand, platen or screen touched.
    Smudge,
    /// Too little ink or too much.
    InkLay,
    /// Lint, a crease or a seam under the screen.
    Garment,
    /// Scorched or not cured.
    Heat,
    /// Anything else.
    Other,
    /// The stencil or mesh failed: breakdown, tear, clog, ghost.
    Screen,
}

impl MisprintCause {
    /// All variants, in the order the app offers them.
    pub const ALL: [Self; 9] = [
        Self::Placement,
        Self::Registration,
        Self::Pinhole,
        Self::Smudge,
        Self::InkLay,
        Self::Garment,
        Self::Heat,
        Self::Screen,
        Self::Other,
    ];
}
