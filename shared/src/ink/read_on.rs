//! What the swatches of a recipe are read on.

use crate::pack::Pack;
use serde::{Deserialize, Serialize};

/// What the target and the swatches of a recipe are read on. **Frozen** names and order: they are stored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Default, Serialize, Deserialize, Pack)]
#[serde(rename_all = "snake_case")]
pub enum ReadOn {
    /// A layer so thick that nothing shows through.
    #[default]
    Thick,
    /// A print on the garment, with the hits of its run.
    Garment,
}

impl ReadOn {
    /// All, in the order they are offered.
    pub const ALL: [Self; 2] = [Self::Thick, Self::Garment];
}
