//! How much ink should be mixed for a run?

use super::experience::{Experience, experience};
use crate::facts::PrintUse;
use crate::ids::RunId;
use crate::screen::ink_need;
use crate::shop::Shop;
use crate::units::Grams;

/// A suggested batch.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SuggestedBatch {
    /// For so many pieces.
    pub pieces: u32,
    /// What goes onto the garments by the formula, with the transfer as set.
    pub printed: Grams,
    /// What is mixed in addition for losses, as set.
    pub loss: Grams,
    /// What such runs really used; none while nothing was weighed.
    pub experience: Option<Experience>,
    /// What to mix: by experience where there is any, else by formula and loss; no more than a weight can be.
    pub grams: Grams,
}

/// The batch a run needs for so many pieces: area × coverage × mesh volume × hits × transfer × density × pieces,
/// and the loss on top. Once such runs were weighed, their grams used for each gram on paper stand in for
/// transfer and loss, which they contain.
pub fn suggested_batch(shop: &Shop, run: RunId, print: &PrintUse, pieces: u32) -> SuggestedBatch {
    let printed = ink_need(&print.ink_use(pieces)).grams;
    let loss = printed * f64::from(print.loss) / 1000.0;
    let experience = experience(shop, run);
    let grams = experience.map_or(printed + loss, |learned| print.on_paper(pieces).grams() * learned.ratio);
    let [printed, loss, grams] = [printed, loss, grams].map(Grams::from_grams);
    // Never less than is needed for the scale's sake.
    let step = shop.ink.scale.step.milligrams().max(1);
    let grams = Grams::from_milligrams(grams.milligrams().saturating_add(step - 1) / step * step).min(Grams::MOST);
    SuggestedBatch { pieces, printed, loss, experience, grams }
}
