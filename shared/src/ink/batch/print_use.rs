//! What a print of a run takes: its art, its mesh, its strokes. **Frozen** as [`crate::facts::Fact`] is.

use crate::facts::PrintUse;
use crate::ids::Subject;
use crate::screen::{InkUse, ink_need};
use crate::shop::Shop;
use crate::units::Grams;

impl PrintUse {
    /// The same for the formula of the ink used, for so many pieces.
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

    /// What pieces take on paper, were all the mesh holds to go over and nothing lost: what used grams are
    /// held against.
    pub fn on_paper(&self, pieces: u32) -> Grams {
        Grams::from_grams(ink_need(&InkUse { transfer: 1.0, ..self.ink_use(pieces) }).grams)
    }
}

/// Density of a mixture, in g/cm³, were the volumes of its components to add up: `100 / Σ (percent / density)`.
/// None where the density of any component is not known.
pub fn density_of(shop: &Shop, percentages: &[(Subject, f64)]) -> Option<f64> {
    let mut volume = 0.0;
    for (component, percent) in percentages {
        volume += percent / (f64::from(shop.ink.component(*component)?.density?) / 1000.0);
    }
    (volume > 0.0).then(|| 100.0 / volume)
}
