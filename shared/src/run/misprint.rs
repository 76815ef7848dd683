//! Why a piece was spoiled.

use crate::pack::Pack;
use serde::{Deserialize, Serialize};

/// The cause of a misprint. **Frozen** names and order: they are stored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, Pack)]
#[serde(rename_all = "snake_case")]
pub enum MisprintCause {
    /// Not where it belongs.
    Placement,
    /// Colours or hits do not meet.
    Registration,
    /// A pinhole or spot in the stencil.
    Pinhole,
    /// Ink got where a hand, platen or screen touched.
    Smudge,
    /// Too little ink or too much.
    InkLay,
    /// Lint, a crease or a seam under the screen.
    Garment,
    /// Too hot or not cured.
    Heat,
    /// Anything else.
    Other,
    /// The stencil or the mesh gave way: breakdown, tear, clog, ghost.
    Screen,
}

impl MisprintCause {
    /// All, in the order they are offered.
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
