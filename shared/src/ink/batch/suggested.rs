//! How much ink to mix for a run.

use super::experience::{Experience, experience};
use crate::facts::PrintUse;
use crate::ids::RunId;
use crate::screen::ink_need;
use crate::shop::Shop;
use crate::units::Grams;

/// The least ink in a screen: with less in front of the squeegee it neither floods nor prints evenly. What is left of
/// it after the run goes back into the pot. Common practice, no source: 150 to 200 g for a frame of the usual size.
pub const SCREEN_CHARGE: Grams = Grams::from_milligrams(150_000);

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
    /// Weight that the run uses: by experience if there is any, else by formula and loss; at most [`Grams::MOST`].
    pub used: Grams,
    /// Weight to mix: what is used, but at least [`SCREEN_CHARGE`] if a piece is to be printed.
    pub grams: Grams,
}

/// The two parts of what a run uses, by the formula.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BatchSplit {
    /// What goes onto the garments.
    pub printed: Grams,
    /// What is lost.
    pub extra: Grams,
}

impl SuggestedBatch {
    /// Its two parts as a scale with this step shows them.
    pub fn split(&self, step: Grams) -> BatchSplit {
        let printed = self.printed.rounded_to(step).min(self.used);
        BatchSplit { printed, extra: self.used.saturating_sub(printed) }
    }

    /// Whether the charge of the screen decides how much to mix, since the run uses less.
    pub fn is_charge(&self) -> bool {
        self.grams > self.used
    }
}

/// The batch that a run needs for a number of pieces. It uses area × coverage × mesh volume × hits × transfer × density ×
/// pieces, plus the loss; once similar runs were weighed, their grams used per calculated gram replace transfer and
/// loss, which they include. At least the charge of the screen is mixed.
pub fn suggested_batch(shop: &Shop, run: RunId, print: &PrintUse, pieces: u32) -> SuggestedBatch {
    let printed = ink_need(&print.ink_use(pieces)).grams;
    let loss = printed * f64::from(print.loss) / 1000.0;
    let experience = experience(shop, run);
    let used = experience.map_or(printed + loss, |learned| print.nominal_use(pieces).grams() * learned.ratio);
    let [printed, loss, used] = [printed, loss, used].map(Grams::from_grams);
    let step = shop.ink.scale.step;
    let used = rounded_up(used, step);
    let charge = if pieces > 0 { rounded_up(SCREEN_CHARGE, step) } else { Grams::ZERO };
    SuggestedBatch { pieces, printed, loss, experience, used, grams: used.max(charge) }
}

/// Rounded up to the scale's steps, so that it is never too little.
fn rounded_up(grams: Grams, step: Grams) -> Grams {
    let step = step.milligrams().max(1);
    Grams::from_milligrams(grams.milligrams().saturating_add(step - 1) / step * step).min(Grams::MOST)
}
