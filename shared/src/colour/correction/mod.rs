//! Finds the smallest additions that bring a pot closest to its target colour.

use super::{Constants, Lab, Viewing};
use model::Model;
use search::Solution;

mod model;
mod search;
mod step;

/// A component that may be added.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Candidate<'a> {
    /// Its absorption and scattering.
    pub constants: &'a Constants,
    /// Grams of it in the pot now.
    pub in_pot: f64,
    /// Grams of it on the shelf.
    pub stock: f64,
    /// Data sheet limit: its largest share of the whole pot, 0 to 1.
    pub most: Option<f64>,
    /// Whether it counts as pigment for the limits on all pigment together.
    pub pigment: bool,
    /// Data sheet limit that it brings along: the largest share of all pigment in a pot that contains it, 0 to 1.
    pub all_pigment: Option<f64>,
}

/// The limit on all pigment in a pot.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct PigmentLimit {
    /// Largest share of the whole pot, 0 to 1.
    pub most: f64,
    /// Grams of pigment in the pot now.
    pub now: f64,
}

/// The pot, its target colour, and what may be added.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct CorrectionProblem<'a> {
    /// Constants of the mixture in the pot: predicted from its recipe, or better corrected by its reading with
    /// [`anchored_to_colour`](super::anchored_to_colour) or [`anchored_to_curve`](super::anchored_to_curve).
    pub pot: &'a Constants,
    /// Grams in the pot.
    pub grams: f64,
    /// Grams that still fit.
    pub headroom: f64,
    /// Target colour.
    pub target: Lab,
    /// How the colour is viewed: in the pot or printed.
    pub seen: Viewing<'a>,
    /// Components that may be added.
    pub candidates: &'a [Candidate<'a>],
    /// The limit on all pigment in the pot. `None` ignores the same limit of each of the `candidates` too.
    pub all_pigment: Option<PigmentLimit>,
    /// Most components to add; clamped to 1 to 3.
    pub max_components: usize,
    /// Step of the scale in grams; 0 leaves amounts unrounded.
    pub resolution: f64,
    /// CIEDE2000 up to which the colour counts as matching.
    pub near_enough: f64,
}

/// An amount of one component.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Addition {
    /// Index of the component in `candidates`.
    pub candidate: usize,
    /// Grams to add.
    pub grams: f64,
}

/// One way to correct the pot.
#[derive(Clone, PartialEq, Debug)]
pub struct Correction {
    /// What to add, in the order of the candidates.
    pub additions: Vec<Addition>,
    /// Predicted CIEDE2000 from the target after the additions.
    pub after: f64,
    /// Predicted colour after the additions.
    pub look: Lab,
}

impl Correction {
    /// Grams added in total.
    pub fn grams(&self) -> f64 {
        self.additions.iter().map(|addition| addition.grams).sum()
    }
}

/// How close additions can bring the pot.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Outcome {
    /// It matches already.
    AlreadyThere,
    /// The last way is predicted to match.
    GetsThere,
    /// The last way brings it closer, but no addition makes it match.
    OnlyCloser,
    /// No addition brings it closer.
    NothingHelps,
}

/// Result of [`what_to_add`].
#[derive(Clone, PartialEq, Debug)]
pub struct Advice {
    /// CIEDE2000 from the target before any addition.
    pub before: f64,
    /// The best way with one component, then with more if that is worth it; each closer than the one before. Empty if
    /// nothing helps. The last is the one advised.
    pub ways: Vec<Correction>,
    /// How close the last way brings the pot.
    pub outcome: Outcome,
}

/// Least gain in CIEDE2000 of a way, or of one more component in it: our own; a smaller one is not seen.
pub const MIN_GAIN: f64 = 0.2;

/// The smallest additions that bring the pot closest to its target, within stock, pot and the data sheets' limits;
/// nothing is taken out. If the pot exceeds a limit already, additions must not make that worse.
///
/// Minimises CIEDE2000 with a small cost on every gram: doubling the pot costs as much as a tenth of a unit (our own).
/// Bounded nonlinear least squares by the Levenberg-Marquardt method: single components first, then the most promising
/// pairs and triples. `None` if the pot is empty or a number is out of range.
pub fn what_to_add(problem: &CorrectionProblem) -> Option<Advice> {
    let sane = |value: f64| value.is_finite() && value >= 0.0;
    let candidates_sane = problem.candidates.iter().all(|candidate| {
        let share = |most: Option<f64>| most.is_none_or(|most| (0.0..=1.0).contains(&most));
        sane(candidate.in_pot) && sane(candidate.stock) && share(candidate.most) && share(candidate.all_pigment)
    });
    let whole_sane = [problem.headroom, problem.resolution, problem.near_enough].into_iter().all(sane);
    let pigment_sane = problem.all_pigment.is_none_or(|limit| (0.0..=1.0).contains(&limit.most) && sane(limit.now));
    let pot_sane = problem.grams > 0.0 && problem.grams.is_finite() && problem.target.is_sensible();
    if !(pot_sane && candidates_sane && whole_sane && pigment_sane) {
        return None;
    }
    let model = Model::of(problem);
    let before = model.off(&[], &[]);
    if before <= problem.near_enough {
        return Some(Advice { before, ways: Vec::new(), outcome: Outcome::AlreadyThere });
    }
    let mut ways: Vec<Correction> = Vec::new();
    let mut nearest = before;
    for found in search::best_of_each_size(&model, problem.max_components.clamp(1, 3)) {
        if let Some(way) = weighed(&model, problem, &found) {
            if way.after <= nearest - MIN_GAIN && nearest > problem.near_enough {
                nearest = way.after;
                ways.push(way);
            }
        }
    }
    let outcome = match ways.last() {
        None => Outcome::NothingHelps,
        Some(way) if way.after <= problem.near_enough => Outcome::GetsThere,
        Some(_) => Outcome::OnlyCloser,
    };
    Some(Advice { before, ways, outcome })
}

/// Rounds the amounts to what the scale can weigh: of each amount rounded down and up, the allowed combination with the
/// least cost.
fn weighed(model: &Model, problem: &CorrectionProblem, found: &Solution) -> Option<Correction> {
    let size = found.candidates.len();
    let grid = problem.resolution / problem.grams;
    let mut best: Option<(f64, [f64; 3])> = None;
    for choice in 0..1_u32 << size {
        let mut parts = found.parts;
        if grid > 0.0 {
            for (index, part) in parts.iter_mut().enumerate().take(size) {
                let steps = *part / grid;
                *part = if choice >> index & 1 == 1 { steps.ceil() } else { steps.floor() } * grid;
            }
        }
        if parts[..size].iter().all(|part| *part > 0.0) && model.allows(&found.candidates, &parts[..size]) {
            let cost = model.cost(&found.candidates, &parts[..size]);
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
    let additions = found.candidates.iter().zip(parts);
    let mut additions: Vec<Addition> =
        additions.map(|(candidate, part)| Addition { candidate: *candidate, grams: part * problem.grams }).collect();
    crate::collections::sort_by_key(&mut additions, |addition| addition.candidate);
    Some(Correction {
        additions,
        after: model.off(&found.candidates, parts),
        look: model.look(&found.candidates, parts),
    })
}

#[cfg(test)]
mod tests;
