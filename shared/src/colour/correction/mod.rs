//! What to add: the smallest additions that bring the pot closest to its target.

use super::{Constants, Lab, Seen};
use model::Model;
use search::Found;

mod model;
mod search;
mod step;

/// A component that could go in.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Offer<'a> {
    /// What it does to light.
    pub constants: &'a Constants,
    /// Grams of it in the pot now.
    pub in_pot: f64,
    /// Grams of it on the shelf.
    pub stock: f64,
    /// The most of it that its sheet allows, as a share of the whole pot.
    pub most: Option<f64>,
    /// Whether it counts as pigment under the limit of all pigment together.
    pub pigment: bool,
    /// The most that all pigment together may be of a pot with it in, as a share.
    pub all_pigment: Option<f64>,
}

/// The pot and what it should become.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Wish<'a> {
    /// What the mixture in the pot does to light: by its recipe, or better held to its reading with
    /// [`anchored_to_colour`](super::anchored_to_colour) or [`anchored_to_curve`](super::anchored_to_curve).
    pub pot: &'a Constants,
    /// Grams in it.
    pub grams: f64,
    /// Grams that still fit.
    pub room: f64,
    /// The colour wanted.
    pub target: Lab,
    /// Where it is looked at.
    pub seen: Seen<'a>,
    /// What could go in.
    pub offers: &'a [Offer<'a>],
    /// The most that all pigment together may be of the pot, and grams of pigment in it now. None leaves the limits of
    /// what is on offer out too.
    pub all_pigment: Option<(f64, f64)>,
    /// Components to add at most, 1 to 3.
    pub at_most: usize,
    /// What the scale shows, in grams; 0 leaves amounts unrounded.
    pub resolution: f64,
    /// CIEDE2000 that is near enough.
    pub near_enough: f64,
}

/// So much of a component.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Addition {
    /// Its place among the offers.
    pub offer: usize,
    /// Grams.
    pub grams: f64,
}

/// One way to correct the pot.
#[derive(Clone, PartialEq, Debug)]
pub struct Correction {
    /// What to add, in the order of the offers.
    pub additions: Vec<Addition>,
    /// Predicted CIEDE2000 from the target afterwards.
    pub after: f64,
    /// The colour predicted.
    pub look: Lab,
}

impl Correction {
    /// Grams added in all.
    pub fn grams(&self) -> f64 {
        self.additions.iter().map(|addition| addition.grams).sum()
    }
}

/// How far additions can bring it.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Verdict {
    /// It is near enough as it is.
    AlreadyThere,
    /// The last way is predicted to be near enough.
    GetsThere,
    /// Closer, but no addition gets there.
    OnlyCloser,
    /// Nothing on offer brings it closer.
    NothingHelps,
}

/// What to add.
#[derive(Clone, PartialEq, Debug)]
pub struct Advice {
    /// CIEDE2000 from the target as it is.
    pub before: f64,
    /// Best with one component, then with more where that is worth it; each closer than the one before. Empty
    /// when nothing helps. The last is the one advised.
    pub ways: Vec<Correction>,
    /// How far that brings it.
    pub verdict: Verdict,
}

/// A way, or one more component in it, must bring this much of CIEDE2000: our own; less is not seen.
pub const WORTH_IT: f64 = 0.2;

/// The smallest additions that bring the pot closest to its target: only additions, within stock, pot and the
/// limits of the sheets. A limit that the pot breaks already is held where no addition makes it worse.
///
/// Least CIEDE2000, where every gram costs a little: doubling the pot weighs as much as a tenth of a unit (our
/// own). Bounded nonlinear least squares by Levenberg and Marquardt's method; one component after the
/// other, then the most promising pairs and threes. None when the pot is empty or a number is no number.
pub fn what_to_add(wish: &Wish) -> Option<Advice> {
    let sane = |value: f64| value.is_finite() && value >= 0.0;
    let offers_sane = wish.offers.iter().all(|offer| {
        let share = |most: Option<f64>| most.is_none_or(|most| (0.0..=1.0).contains(&most));
        sane(offer.in_pot) && sane(offer.stock) && share(offer.most) && share(offer.all_pigment)
    });
    let whole_sane = [wish.room, wish.resolution, wish.near_enough].into_iter().all(sane);
    let pigment_sane = wish.all_pigment.is_none_or(|(most, now)| (0.0..=1.0).contains(&most) && sane(now));
    let pot_sane = wish.grams > 0.0 && wish.grams.is_finite() && wish.target.is_sensible();
    if !(pot_sane && offers_sane && whole_sane && pigment_sane) {
        return None;
    }
    let model = Model::of(wish);
    let before = model.off(&[], &[]);
    if before <= wish.near_enough {
        return Some(Advice { before, ways: Vec::new(), verdict: Verdict::AlreadyThere });
    }
    let mut ways: Vec<Correction> = Vec::new();
    let mut nearest = before;
    for found in search::best_of_each_size(&model, wish.at_most.clamp(1, 3)) {
        if let Some(way) = weighed(&model, wish, &found) {
            if way.after <= nearest - WORTH_IT && nearest > wish.near_enough {
                nearest = way.after;
                ways.push(way);
            }
        }
    }
    let verdict = match ways.last() {
        None => Verdict::NothingHelps,
        Some(way) if way.after <= wish.near_enough => Verdict::GetsThere,
        Some(_) => Verdict::OnlyCloser,
    };
    Some(Advice { before, ways, verdict })
}

/// As the scale can weigh it: of the weights next to it, up and down for each component, those that come closest.
fn weighed(model: &Model, wish: &Wish, found: &Found) -> Option<Correction> {
    let size = found.offers.len();
    let grid = wish.resolution / wish.grams;
    let mut best: Option<(f64, [f64; 3])> = None;
    for choice in 0..1_u32 << size {
        let mut parts = found.parts;
        if grid > 0.0 {
            for (place, part) in parts.iter_mut().enumerate().take(size) {
                let steps = *part / grid;
                *part = if choice >> place & 1 == 1 { steps.ceil() } else { steps.floor() } * grid;
            }
        }
        if parts[..size].iter().all(|part| *part > 0.0) && model.allows(&found.offers, &parts[..size]) {
            let cost = model.cost(&found.offers, &parts[..size]);
            if best.is_none_or(|(least, _)| cost < least) {
                best = Some((cost, parts));
            }
        }
        if grid == 0.0 {
            break;
        }
    }
    let (_, parts) = best?;
    let parts = &parts[..size];
    let additions = found.offers.iter().zip(parts);
    let mut additions: Vec<Addition> =
        additions.map(|(offer, part)| Addition { offer: *offer, grams: part * wish.grams }).collect();
    crate::collections::sort_by_key(&mut additions, |addition| addition.offer);
    Some(Correction { additions, after: model.off(&found.offers, parts), look: model.look(&found.offers, parts) })
}

#[cfg(test)]
mod tests;
