//! Predicts the pot's colour after an addition, and its derivatives by each component.

use crate::colour::correction::{Candidate, CorrectionProblem, PigmentLimit};
use crate::colour::difference::{Weights2000, parts2000};
use crate::colour::spectrum::{WEIGHTS, WHITE};
use crate::colour::{Bands, Constants, Lab, Surface, Viewing};

/// Cost of doubling the pot, in units of CIEDE2000.
const GRAM_COST: f64 = 0.1;

/// A linear limit on the parts added: their weighted sum is at most `most`.
#[derive(Clone, Copy)]
pub struct Limit {
    pub weights: [f64; 3],
    pub most: f64,
}

/// The problem in parts of the pot's weight: 1 is as much as the pot holds now.
pub struct Model<'a> {
    pub candidates: &'a [Candidate<'a>],
    pot: &'a Constants,
    target: Lab,
    surface: Surface,
    /// Number of films and the reflectance under them; `None` if viewed in the pot.
    printed: Option<(f64, Bands)>,
    grams: f64,
    headroom: f64,
    all_pigment: Option<PigmentLimit>,
}

/// The residuals at a point of the search, and their derivatives.
pub struct Linearisation {
    /// The three components of CIEDE2000, then the cost of the grams.
    pub residuals: [f64; 4],
    /// The derivatives of those by each part added.
    pub derivatives: [[f64; 4]; 3],
}

impl<'a> Model<'a> {
    pub fn of(problem: &CorrectionProblem<'a>) -> Self {
        let (surface, printed) = match problem.seen {
            Viewing::InBulk(surface) => (surface, None),
            Viewing::Printed(print) => (print.surface, Some((print.films(), print.ground().bands))),
        };
        Self {
            candidates: problem.candidates,
            pot: problem.pot,
            target: problem.target,
            surface,
            printed,
            grams: problem.grams,
            headroom: problem.headroom,
            all_pigment: problem.all_pigment,
        }
    }

    /// The limits on adding the chosen candidates.
    pub fn limits(&self, chosen: &[usize]) -> Vec<Limit> {
        let mut limits = Vec::with_capacity(12);
        let one = |index: usize, weight: f64| {
            let mut weights = [0.0; 3];
            weights[index] = weight;
            weights
        };
        // A share of the whole: Σ counted x + now ≤ most · (1 + Σ x).
        let share = |counts: [bool; 3], most: f64, now: f64| {
            let mut weights = [0.0; 3];
            for (weight, counts) in weights.iter_mut().zip(counts).take(chosen.len()) {
                *weight = f64::from(u8::from(counts)) - most;
            }
            Limit { weights, most: (most - now / self.grams).max(0.0) }
        };
        for (index, chosen_candidate) in chosen.iter().enumerate() {
            let candidate = &self.candidates[*chosen_candidate];
            limits.push(Limit { weights: one(index, -1.0), most: 0.0 });
            limits.push(Limit { weights: one(index, 1.0), most: candidate.stock / self.grams });
            if let Some(most) = candidate.most {
                limits.push(share(std::array::from_fn(|at| at == index), most, candidate.in_pot));
            }
        }
        if let Some(PigmentLimit { most, now }) = self.all_pigment {
            // An added base brings the limit of its own data sheet along.
            let most =
                chosen.iter().filter_map(|candidate| self.candidates[*candidate].all_pigment).fold(most, f64::min);
            let counts = |at: usize| chosen.get(at).is_some_and(|candidate| self.candidates[*candidate].pigment);
            limits.push(share(std::array::from_fn(counts), most, now));
        }
        limits.push(Limit { weights: [1.0; 3], most: self.headroom / self.grams });
        limits
    }

    /// The most of one candidate that is in stock and fits, in parts of the pot.
    pub fn at_hand(&self, candidate: usize) -> f64 {
        self.candidates[candidate].stock.min(self.headroom) / self.grams
    }

    /// Whether the parts keep all limits.
    pub fn allows(&self, chosen: &[usize], parts: &[f64]) -> bool {
        let sum = |limit: &Limit| parts.iter().zip(limit.weights).map(|(part, weight)| part * weight).sum::<f64>();
        self.limits(chosen).iter().all(|limit| sum(limit) <= limit.most + 1e-9)
    }

    /// K and S of the pot with the additions, before dividing by the larger weight.
    fn sums(&self, chosen: &[usize], parts: &[f64], band: usize) -> (f64, f64) {
        let (mut k, mut s) = (self.pot.k[band], self.pot.s[band]);
        for (candidate, part) in chosen.iter().zip(parts) {
            let constants = self.candidates[*candidate].constants;
            k += part * constants.k[band];
            s += part * constants.s[band];
        }
        (k, s)
    }

    /// Predicted colour after the additions.
    pub fn look(&self, chosen: &[usize], parts: &[f64]) -> Lab {
        let whole = 1.0 + parts.iter().sum::<f64>();
        let mut xyz = [0.0; 3];
        for (band, weights) in WEIGHTS.iter().enumerate() {
            let (k, s) = self.sums(chosen, parts, band);
            let inner = match &self.printed {
                None => hiding(k, s).0,
                Some((films, ground)) => film(k * films / whole, s * films / whole, ground[band]).0,
            };
            let seen = self.surface.measured(inner);
            for (total, weight) in xyz.iter_mut().zip(weights) {
                *total += weight * seen;
            }
        }
        Lab::from_relative([xyz[0] / WHITE[0], xyz[1] / WHITE[1], xyz[2] / WHITE[2]])
    }

    /// Predicted CIEDE2000 from the target after the additions.
    pub fn off(&self, chosen: &[usize], parts: &[f64]) -> f64 {
        crate::colour::ciede2000(self.target, self.look(chosen, parts))
    }

    /// The objective to minimise: the squares of CIEDE2000 and of the cost of the grams.
    pub fn cost(&self, chosen: &[usize], parts: &[f64]) -> f64 {
        self.cost_of(self.look(chosen, parts), parts.iter().sum())
    }

    /// The objective for a predicted colour and the parts added for it.
    pub fn cost_of(&self, look: Lab, added: f64) -> f64 {
        let off = crate::colour::ciede2000(self.target, look);
        off * off + (GRAM_COST * added).powi(2)
    }

    /// The residuals and their derivatives. With `quick` the weighting functions of CIEDE2000 are held constant, which
    /// is accurate enough to come near.
    pub fn linearise(&self, chosen: &[usize], parts: &[f64], quick: bool) -> Linearisation {
        let total = parts.iter().sum::<f64>();
        let whole = 1.0 + total;
        let mut xyz = [0.0; 3];
        let mut along = [[0.0; 3]; 3];
        for (band, weights) in WEIGHTS.iter().enumerate() {
            let (k, s) = self.sums(chosen, parts, band);
            let (inner, by_k, by_s, films) = match &self.printed {
                None => {
                    let (inner, by_k, by_s) = hiding(k, s);
                    (inner, by_k, by_s, None)
                }
                Some((films, ground)) => {
                    let (inner, by_k, by_s) = film(k * films / whole, s * films / whole, ground[band]);
                    (inner, by_k, by_s, Some(*films))
                }
            };
            let seen = self.surface.measured(inner);
            let back = 1.0 - self.surface.inside * inner;
            let skin = (1.0 - self.surface.outside) * (1.0 - self.surface.inside) / (back * back);
            for (total, weight) in xyz.iter_mut().zip(weights) {
                *total += weight * seen;
            }
            for (index, candidate) in chosen.iter().enumerate() {
                let constants = self.candidates[*candidate].constants;
                let (dk, ds) = match films {
                    None => (constants.k[band], constants.s[band]),
                    Some(films) => (
                        films * (constants.k[band] - k / whole) / whole,
                        films * (constants.s[band] - s / whole) / whole,
                    ),
                };
                let slope = skin * (by_k * dk + by_s * ds);
                for (total, weight) in along[index].iter_mut().zip(weights) {
                    *total += weight * slope;
                }
            }
        }
        let relative = [xyz[0] / WHITE[0], xyz[1] / WHITE[1], xyz[2] / WHITE[2]];
        let lab = Lab::from_relative(relative);
        let held = Weights2000::between(self.target, lab);
        let parts_at = |lab: Lab| if quick { held.apart(self.target, lab) } else { parts2000(self.target, lab) };
        let here = parts_at(lab);
        let by_lab = [
            parts_at(Lab { l: lab.l + NUDGE, ..lab }),
            parts_at(Lab { a: lab.a + NUDGE, ..lab }),
            parts_at(Lab { b: lab.b + NUDGE, ..lab }),
        ]
        .map(|there| [0, 1, 2].map(|part| (there[part] - here[part]) / NUDGE));

        let mut derivatives = [[0.0; 4]; 3];
        for (out, along) in derivatives.iter_mut().zip(&along).take(chosen.len()) {
            let root = |c: usize| along[c] / WHITE[c] * root_slope(relative[c]);
            let (x, y, z) = (root(0), root(1), root(2));
            let [l, a, b] = [116.0 * y, 500.0 * (x - y), 200.0 * (y - z)];
            for part in 0..3 {
                out[part] = l * by_lab[0][part] + a * by_lab[1][part] + b * by_lab[2][part];
            }
            out[3] = GRAM_COST;
        }
        Linearisation { residuals: [here[0], here[1], here[2], GRAM_COST * total], derivatives }
    }
}

/// Step in L*, a* and b* for numerical derivatives: small, but well above rounding errors.
const NUDGE: f64 = 1e-5;

/// Derivative of the cube root in CIE 15's formula for L*a*b*.
fn root_slope(t: f64) -> f64 {
    if t > 216.0 / 24389.0 { 1.0 / (3.0 * t.cbrt().powi(2)) } else { 841.0 / 108.0 }
}

/// Reflectance of a layer that hides, and its derivatives by K and S.
fn hiding(k: f64, s: f64) -> (f64, f64, f64) {
    if s <= 1e-12 {
        return (0.0, 0.0, 0.0);
    }
    let q = k / s;
    let root = (q * (q + 2.0)).sqrt();
    let r = 1.0 / (1.0 + q + root);
    let by_q = -r / root.max(1e-9);
    (r, by_q / s, -by_q * q / s)
}

/// Reflectance of a film over a backing as in `kubelka_munk::over_backing`, and its derivatives by K and S.
fn film(k: f64, s: f64, g: f64) -> (f64, f64, f64) {
    let square = k * (k + 2.0 * s);
    let root = square.sqrt();
    let (t, bend) = if root < 0.01 {
        (1.0 - square / 3.0, -2.0 / 3.0 + 8.0 / 15.0 * square)
    } else {
        let e = (-2.0 * root).exp();
        let tanh = (1.0 - e) / (1.0 + e);
        let t = tanh / root;
        (t, (1.0 - tanh * tanh - t) / square)
    };
    let (t_k, t_s) = (bend * (k + s), bend * k);
    let (up, down) = (s - (k + s) * g, k + s - s * g);
    let (n, m) = (t * up + g, t * down + 1.0);
    let r = n / m;
    let by = |n_by: f64, m_by: f64| (n_by - r * m_by) / m;
    (r, by(t_k * up - t * g, t_k * down + t), by(t_s * up + t * (1.0 - g), t_s * down + t * (1.0 - g)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::colour::check_rows::near;
    use crate::colour::kubelka_munk::over_backing;

    #[test]
    fn films_and_their_derivatives_agree_with_the_closed_form() {
        for (k, s) in [(0.3, 0.5), (2.0, 0.1), (1e-4, 0.2), (0.004, 0.008), (5.0, 9.0), (0.0, 0.4)] {
            for g in [0.02, 0.4, 0.9] {
                let (r, by_k, by_s) = film(k, s, g);
                near(r, over_backing(k, s, g), 1e-9);
                let h = 1e-6;
                near(by_k, (over_backing(k + h, s, g) - over_backing(k, s, g)) / h, 2e-5);
                near(by_s, (over_backing(k, s + h, g) - over_backing(k, s, g)) / h, 2e-5);
            }
        }
    }
}
