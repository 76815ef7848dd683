//! What a print of a run takes: its art, its mesh, its strokes. **Frozen** as [`crate::facts::Fact`] is.

use crate::facts::PrintUse;
use crate::ids::Subject;
use crate::screen::{InkUse, ink_need};
use crate::shop::Shop;
use crate::units::Grams;

impl PrintUse {
    /// The input of the ink formula for a number of pieces.
    pub fn ink_use(&self, pieces: u32) -> InkUse {
        InkUse {
            width: self.width,
            height: self.height,
            coverage: f64::from(self.coverage) / 1000.0,
            volume: f64::from(self.volume) / 100.0,
            hits: u32::from(self.hits),
            pieces,
            transfer: f64::from(self.transfer) / 1000.0,
            density: f64::from(self.density) / 1000.0,
        }
    }

    /// Calculated weight for a number of pieces, if all ink of the mesh were transferred and nothing lost: the
    /// reference for the grams used.
    pub fn nominal_use(&self, pieces: u32) -> Grams {
        Grams::from_grams(ink_need(&InkUse { transfer: 1.0, ..self.ink_use(pieces) }).grams)
    }
}

/// Density of a mixture in g/cm³, assuming that the volumes of its components add up: `100 / Σ (percent / density)`.
/// `None` if the density of a component is unknown.
pub fn density_of(shop: &Shop, percentages: &[(Subject, f64)]) -> Option<f64> {
    let mut volume = 0.0;
    for (component, percent) in percentages {
        volume += percent / (f64::from(shop.ink.component(*component)?.density?) / 1000.0);
    }
    (volume > 0.0).then(|| 100.0 / volume)
}
