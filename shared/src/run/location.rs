//! Where on the garment a run prints.

use crate::pack::Pack;
use serde::{Deserialize, Serialize};

/// A print location on a garment. **Frozen**: names and order are stored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Default, Serialize, Deserialize, Pack)]
#[serde(rename_all = "snake_case")]
pub enum Location {
    /// Full front.
    #[default]
    FullFront,
    /// Left chest, as worn.
    LeftChest,
    /// Right chest, as worn.
    RightChest,
    /// Centre chest.
    CentreChest,
    /// Full back.
    FullBack,
    /// Across the shoulders.
    UpperBack,
    /// Left sleeve, as worn.
    LeftSleeve,
    /// Right sleeve, as worn.
    RightSleeve,
    /// Inside the neck, in place of a label.
    InsideNeck,
    /// On the pocket.
    Pocket,
    /// Anywhere else.
    Other,
}

impl Location {
    /// All variants, in the order the app offers them.
    pub const ALL: [Self; 11] = [
        Self::FullFront,
        Self::LeftChest,
        Self::RightChest,
        Self::CentreChest,
        Self::FullBack,
        Self::UpperBack,
        Self::LeftSleeve,
        Self::RightSleeve,
        Self::InsideNeck,
        Self::Pocket,
        Self::Other,
    ];
}
