//! On what the swatches of a recipe are read.

use crate::pack::Pack;
use serde::{Deserialize, Serialize};

/// On what target and swatches of a recipe are read. **Frozen** names and order: they are stored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Default, Serialize, Deserialize, Pack)]
#[serde(rename_all = "snake_case")]
pub enum ReadOn {
    /// So thick that nothing shines through.
    #[default]
    Thick,
    /// Printed on the garment, with the hits of its run.
    Garment,
}

impl ReadOn {
    /// All, in the order they are offered.
    pub const ALL: [Self; 2] = [Self::Thick, Self::Garment];
}
