//! What a print of a run takes, as it is stored. **Frozen** as [`crate::facts::Fact`] is.

use crate::codec::Encode;
use crate::units::Length;
use serde::{Deserialize, Serialize};

/// How much ink a print takes, as calculated for a run.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, Encode)]
#[serde(deny_unknown_fields)]
pub struct PrintUse {
    /// Width of the art.
    pub width: Length,
    /// Height of the art.
    pub height: Length,
    /// Share of that rectangle that is printed, in thousandths.
    pub coverage: u16,
    /// Ink volume of the mesh, in hundredths of a cm³/m².
    pub volume: u16,
    /// Strokes that lay ink.
    pub hits: u8,
    /// Share of the mesh's ink that is transferred to the garment, in thousandths.
    pub transfer: u16,
    /// Density of the ink in milligrams per cubic centimetre.
    pub density: u16,
    /// Extra to mix for what stays in pot, screen and flood, in thousandths.
    pub loss: u16,
}

impl PrintUse {
    /// Whether every value is within its limits; see [`crate::journal::JournalFact::in_bounds`].
    pub(crate) fn in_bounds(self) -> bool {
        let side = |length: Length| (0..=2_000_000).contains(&length.micrometres());
        side(self.width)
            && side(self.height)
            && self.coverage <= 1_000
            && (1..=20).contains(&self.hits)
            && self.transfer <= 5_000
            && (100..=9_000).contains(&self.density)
            && self.loss <= 10_000
    }
}
