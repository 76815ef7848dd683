//! How much ink to mix for a run.

use super::experience::{Experience, experience};
use crate::facts::PrintUse;
use crate::ids::RunId;
use crate::screen::ink_need;
use crate::shop::Shop;
use crate::units::Grams;

/// A suggested batch.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SuggestedBatch {
    /// Number of pieces.
    pub pieces: u32,
    /// Weight on the garments by the formula, with the transfer as set.
    pub printed: Grams,
    /// Extra weight for losses, as set.
    pub loss: Grams,
    /// What similar runs really used; `None` if nothing was weighed.
    pub experience: Option<Experience>,
    /// Weight to mix: by experience if there is any, else by formula and loss; at most [`Grams::MOST`].
    pub grams: Grams,
}

/// The two parts of a suggested batch, which together are the weight to mix.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BatchSplit {
    /// What goes onto the garments.
    pub printed: Grams,
    /// What is mixed in addition.
    pub extra: Grams,
}

impl SuggestedBatch {
    /// Its two parts as a scale with this step shows them.
    pub fn split(&self, step: Grams) -> BatchSplit {
        let printed = self.printed.rounded_to(step).min(self.grams);
        BatchSplit { printed, extra: self.grams.saturating_sub(printed) }
    }
}

/// The batch that a run needs for a number of pieces: area × coverage × mesh volume × hits × transfer × density ×
/// pieces, plus the loss. Once similar runs were weighed, their grams used per calculated gram replace transfer and
/// loss, which they include.
pub fn suggested_batch(shop: &Shop, run: RunId, print: &PrintUse, pieces: u32) -> SuggestedBatch {
    let printed = ink_need(&print.ink_use(pieces)).grams;
    let loss = printed * f64::from(print.loss) / 1000.0;
    let experience = experience(shop, run);
    let grams = experience.map_or(printed + loss, |learned| print.nominal_use(pieces).grams() * learned.ratio);
    let [printed, loss, grams] = [printed, loss, grams].map(Grams::from_grams);
    // Rounded up to the scale's steps, so that it is never too little.
    let step = shop.ink.scale.step.milligrams().max(1);
    let grams = Grams::from_milligrams(grams.milligrams().saturating_add(step - 1) / step * step).min(Grams::MOST);
    SuggestedBatch { pieces, printed, loss, experience, grams }
}
