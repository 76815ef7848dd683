//! The fabric of a garment, as far as it matters for ink and heat.

use crate::pack::Pack;
use serde::{Deserialize, Serialize};

/// The fabric of a garment. **Frozen** names and order: they are stored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Default, Serialize, Deserialize, Pack)]
#[serde(rename_all = "snake_case")]
pub enum Fabric {
    /// Cotton.
    #[default]
    Cotton,
    /// Cotton and polyester.
    Blend,
    /// Polyester.
    Polyester,
    /// Cotton, polyester and rayon.
    TriBlend,
    /// Nylon.
    Nylon,
    /// Cotton canvas: totes, aprons.
    Canvas,
    /// Anything else.
    Other,
}

impl Fabric {
    /// All fabrics, in the order in which they are offered.
    pub const ALL: [Self; 7] =
        [Self::Cotton, Self::Blend, Self::Polyester, Self::TriBlend, Self::Nylon, Self::Canvas, Self::Other];

    /// Whether heat can damage it in ways that cotton is not: dye migration, melting fibres.
    pub fn fears_heat(self) -> bool {
        matches!(self, Self::Blend | Self::Polyester | Self::TriBlend | Self::Nylon)
    }
}
