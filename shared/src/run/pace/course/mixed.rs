//! What the shop's runs have in common, and how far a run is from it.
//!
//! A run's coefficients are taken as a draw around the shop's own: β ~ N(m, B). Each earlier run tells about
//! its β with the error of its pieces, all of them together about m and B. m and its error are the weighted
//! least squares of the linear mixed model (A. Gelman et al., "Bayesian Data Analysis", 3rd ed. 2013, chapters
//! 5 and 15; for the level alone it is the credibility formula of H. Bühlmann, ASTIN Bulletin 4, 1967). B and
//! the size of the effects come from a few steps of expectation and maximisation with an inverse-χ² prior,
//! which draws what thin data say towards the defaults below (for the size of m as in M. E. Tipping, Journal
//! of Machine Learning Research 1, 2001).

use super::matrix::{Matrix, TERMS, Vector, add_outer, dot, inverse, times};
use super::terms::{CHANGE, LEVEL, START, terms};
use crate::run::PaceSummary;

// Standard deviations assumed where nothing is known, as fractions of a settled piece's time (the drift's: per
// hundred pieces). Our own, chosen in the simulation of `tests/run/calibration/`.

/// Prior standard deviation of the shop's effects around zero: start, settling, drift, change of pile.
pub(super) const SHOP_EFFECT: [f64; 4] = [0.04, 0.03, 0.03, 0.1];
/// Prior standard deviation of one run's effects around the shop's.
pub(super) const RUN_EFFECT: [f64; 4] = [0.02, 0.02, 0.025, 0.1];
/// Of one run's effect, as a fraction of the shop's effect, besides.
const RUN_VARIES: f64 = 0.25;
/// How far the shop's effects are let go at first in learning.
const WIDE: f64 = 0.6;
/// Runs that the defaults above weigh as much as.
pub(super) const DEFAULT_RUNS: f64 = 3.0;
/// Degrees of freedom of the shop's effects' variance.
const SHOP_DEGREES: f64 = 0.15;
/// Steps of expectation and maximisation.
const STEPS: usize = 6;
/// Standard deviation of an uninformative prior.
pub(super) const VAGUE: f64 = 100.0;

/// What one run says about its coefficients: XᵀΣ⁻¹X and XᵀΣ⁻¹y.
pub(super) struct Observed {
    precision: Matrix,
    pull: Vector,
}

impl Observed {
    /// `level` is the run's in units of `unit`: effects are fractions of the run's own level.
    pub(super) fn of(run: &PaceSummary, level: f64, unit: f64, noise: f64, reach: f64) -> Self {
        let mut observed = Self { precision: [[0.0; TERMS]; TERMS], pull: [0.0; TERMS] };
        let piece = noise * level * level;
        for stretch in run.stretches.iter().filter(|stretch| stretch.pieces > 0) {
            let pieces = f64::from(stretch.pieces);
            let mut x = terms(f64::from(stretch.place) - 1.0, 1.0, 0.0, reach);
            for effect in &mut x[START..] {
                *effect *= level;
            }
            observed.add(&x, f64::from(stretch.seconds) / (pieces * unit), pieces / piece);
        }
        if run.changes > 0 {
            let changes = f64::from(run.changes);
            let mut x = [0.0; TERMS];
            x[CHANGE] = 1.0;
            // The gap itself, and the mean of the two beside it.
            observed.add(&x, f64::from(run.change_seconds) / (changes * unit), changes / (1.5 * piece));
        }
        observed
    }

    fn add(&mut self, x: &Vector, y: f64, weight: f64) {
        add_outer(&mut self.precision, x, weight);
        for (pull, x) in self.pull.iter_mut().zip(x) {
            *pull += weight * x * y;
        }
    }
}

/// What the shop's runs have in common.
pub(super) struct ShopCourse {
    /// The shop's coefficients.
    pub(super) mean: Vector,
    /// Their error.
    pub(super) shared: Matrix,
    /// The variance of a run's own coefficients around them.
    pub(super) own: Vector,
}

/// What runs have in common. `observed` tells what a run says if its level is as given; `levels` are a first guess at
/// these.
pub(super) fn mixed_model(level: f64, levels: &mut [f64], observed: impl Fn(usize, f64) -> Observed) -> ShopCourse {
    let mut own = default_own(level, &[0.0; TERMS]);
    let mut size: Vector = std::array::from_fn(|term| if term == LEVEL { VAGUE } else { WIDE * WIDE });
    let (mut mean, mut shared) = ([0.0; TERMS], [[0.0; TERMS]; TERMS]);
    let mut runs = Vec::with_capacity(levels.len());
    for step in 0..STEPS {
        let mut precision = [[0.0; TERMS]; TERMS];
        let mut pull = [0.0; TERMS];
        runs.clear();
        for (run, level) in levels.iter().enumerate() {
            let seen = observed(run, *level);
            let mut with_own = seen.precision;
            for term in 0..TERMS {
                with_own[term][term] += 1.0 / own[term];
            }
            let (variance, _) = inverse(&with_own);
            // J − J(J + B⁻¹)⁻¹J = B⁻¹ − B⁻¹(J + B⁻¹)⁻¹B⁻¹, and its pull B⁻¹(J + B⁻¹)⁻¹z.
            let moved = times(&variance, &seen.pull);
            for row in 0..TERMS {
                pull[row] += moved[row] / own[row];
                for col in 0..TERMS {
                    precision[row][col] -= variance[row][col] / (own[row] * own[col]);
                }
                precision[row][row] += 1.0 / own[row];
            }
            runs.push((seen, variance));
        }
        // The level is around one unit, every effect around none. What no run has shown stays at its default.
        for term in 0..TERMS {
            if step == 0 && term != LEVEL && precision[term][term] < 1.0 {
                size[term] = SHOP_EFFECT[term - 1].powi(2);
            }
            precision[term][term] += 1.0 / size[term];
        }
        pull[LEVEL] += 1.0 / size[LEVEL];
        (shared, _) = inverse(&precision);
        mean = times(&shared, &pull);
        if step + 1 == STEPS {
            break;
        }
        let mut squares = [0.0; TERMS];
        for ((seen, variance), level) in runs.iter().zip(levels.iter_mut()) {
            // β − m given the run: V(z − Jm) with variance V + VJ·M·JV.
            let off: Vector = std::array::from_fn(|term| seen.pull[term] - dot(&seen.precision[term], &mean));
            let off = times(variance, &off);
            *level = ((mean[LEVEL] + off[LEVEL]) / mean[LEVEL]).max(0.2);
            for term in 0..TERMS {
                let gain: Vector = std::array::from_fn(|col| dot(&variance[term], &seen.precision[col]));
                squares[term] += off[term].powi(2) + variance[term][term] + dot(&gain, &times(&shared, &gain));
            }
        }
        let default = default_own(level, &mean);
        for term in 0..TERMS {
            own[term] = (DEFAULT_RUNS * default[term] + squares[term]) / (DEFAULT_RUNS + runs.len() as f64);
            if term != LEVEL {
                let default = SHOP_EFFECT[term - 1].powi(2);
                let seen = mean[term].powi(2) + shared[term][term];
                size[term] = (SHOP_DEGREES * default + seen) / (SHOP_DEGREES + 1.0);
            }
        }
    }
    ShopCourse { mean, shared, own }
}

/// The variance of a run's own coefficients where runs tell nothing of it: an effect that the shop's runs have
/// varies with it.
fn default_own(level: f64, mean: &Vector) -> Vector {
    std::array::from_fn(|term| match term {
        LEVEL => level * level,
        _ => RUN_EFFECT[term - 1].powi(2) + (RUN_VARIES * mean[term]).powi(2),
    })
}
