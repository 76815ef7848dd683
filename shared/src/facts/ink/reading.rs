//! A swatch's colour as it was read, and on what. **Frozen** as [`crate::facts::Fact`] is.

use crate::codec::Encode;
use serde::{Deserialize, Serialize};

/// What the target and the swatches of a recipe are read on. **Frozen** names and order: they are stored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Default, Serialize, Deserialize, Encode)]
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

/// How a colour was read. **Frozen** names and order: they are stored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Default, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case")]
pub enum ReadBy {
    /// By an instrument.
    #[default]
    Instrument,
    /// From a photo.
    Photo,
    /// From a colour on a screen.
    Screen,
}

impl ReadBy {
    /// All, in the order they are offered.
    pub const ALL: [Self; 3] = [Self::Instrument, Self::Photo, Self::Screen];
}

/// A colour in CIE L*a*b* (D65, 2°), in thousandths. **Frozen**: stored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, Encode)]
#[serde(deny_unknown_fields)]
pub struct ColourReading {
    /// L*, 0 black to 100,000 white.
    pub l: i32,
    /// a*, green below zero, red above.
    pub a: i32,
    /// b*, blue below zero, yellow above.
    pub b: i32,
    /// How it was read.
    pub by: ReadBy,
}

/// Largest a* or b*, in whole units: beyond every surface colour.
pub(crate) const MAX_LAB_AB: f64 = 160.0;

impl ColourReading {
    /// From L*, a*, b*.
    pub fn from_lab(lab: [f64; 3], by: ReadBy) -> Self {
        let [l, a, b] = lab.map(|value| (value * 1000.0).round() as i32);
        Self { l, a, b, by }
    }

    /// L*, a*, b*.
    pub fn lab(self) -> [f64; 3] {
        [self.l, self.a, self.b].map(|thousandths| f64::from(thousandths) / 1000.0)
    }

    /// Whether every value is within its limits; see [`crate::journal::JournalFact::in_bounds`].
    pub(crate) fn in_bounds(self) -> bool {
        let furthest = (MAX_LAB_AB * 1000.0) as i32;
        let side = -furthest..=furthest;
        (0..=110_000).contains(&self.l) && side.contains(&self.a) && side.contains(&self.b)
    }
}
