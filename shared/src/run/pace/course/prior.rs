//! What the shop's earlier runs say about the course of a new one, before and while it is pulled.
//!
//! The new run starts from the shop's coefficients m with the variance B + M: B is how far a run is from the
//! shop, M the error of m (see `mixed.rs`). Each of its gaps moves it on: earlier runs fade as it goes.

use super::correlation::{Weights, estimate, weights_from, weights_unknown};
use super::matrix::{Matrix, TERMS, Vector};
use super::mixed::{DEFAULT_RUNS, Observed, RUN_EFFECT, SHOP_EFFECT, ShopCourse, VAGUE, mixed_model};
use super::terms::{CHANGE, LEAST_REACH, LEVEL, START};
use crate::run::PaceSummary;

/// What is expected of the course of a run. Times are in units of `unit`.
#[derive(Clone, Debug, PartialEq)]
pub struct CoursePrior {
    /// Seconds of a settled piece; `None` if nothing is known of it.
    pub(super) unit: Option<f64>,
    /// Expected coefficients.
    pub(super) mean: Vector,
    /// Error of `mean`: the same for every run that is forecast from it.
    pub(super) shared: Matrix,
    /// Variance of a run's own coefficients around the shop's.
    pub(super) own: Vector,
    /// Variance of a piece's time.
    pub(super) noise: f64,
    /// Degrees of freedom of `noise`.
    pub(super) noise_degrees: f64,
    /// Degrees of freedom of the level's variance.
    pub(super) level_degrees: f64,
    /// How alike neighbouring pieces are.
    pub(super) correlation: Weights,
    /// The piece from which a drift is not carried on.
    pub(super) reach: f64,
}

/// Where an expectation comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RunSimilarity {
    /// Runs at the same location, on the same fabric, with the same hits and flash.
    Alike,
    /// Other runs.
    Other,
}

// Standard deviations assumed where nothing is known, as fractions of a piece's time. Our own, chosen in the
// simulation of `tests/run/calibration/`.

/// Of one run's level from the level of runs alike, and of other runs.
const LEVEL_ALIKE: f64 = 0.125;
const LEVEL_OTHER: f64 = 0.35;
/// Of one piece's time from the next one's.
const NOISE: f64 = 0.35;
const NOISE_DEGREES: f64 = 2.0;
/// Least settled level, as a fraction of the runs' mean.
const LEAST_LEVEL: f64 = 0.1;
/// Of a guess from the run's mean, and the part of that variance that a printer's guesses share.
const GUESS_ERROR: f64 = 0.25;
const GUESS_SHARED: f64 = 0.5;

impl CoursePrior {
    /// When there is no earlier run.
    pub fn unknown() -> Self {
        let own: Vector = std::array::from_fn(|term| if term == LEVEL { VAGUE } else { RUN_EFFECT[term - 1].powi(2) });
        let mut shared = [[0.0; TERMS]; TERMS];
        for term in START..TERMS {
            shared[term][term] = SHOP_EFFECT[term - 1].powi(2);
        }
        Self {
            unit: None,
            mean: [1.0, 0.0, 0.0, 0.0, 0.0],
            shared,
            own,
            noise: NOISE * NOISE,
            noise_degrees: NOISE_DEGREES,
            level_degrees: 4.0,
            correlation: weights_unknown(),
            reach: LEAST_REACH,
        }
    }

    /// From summaries of earlier runs. Those without a usable gap do not count; with none left it is
    /// [`unknown`](Self::unknown).
    pub fn learned(runs: &[&PaceSummary], kinship: RunSimilarity) -> Self {
        let known: Vec<(&PaceSummary, f64)> = runs.iter().filter_map(|run| Some((*run, run.mean()?))).collect();
        if known.is_empty() {
            return Self::unknown();
        }
        let unit = known.iter().map(|(_, mean)| mean).sum::<f64>() / known.len() as f64;
        let Noise { variance: noise, degrees: noise_degrees, correlation, rho } = noise_of(&known);
        let reach = known.iter().map(|(run, _)| f64::from(run.pieces)).fold(LEAST_REACH, f64::max);
        let level = if kinship == RunSimilarity::Alike { LEVEL_ALIKE } else { LEVEL_OTHER };
        let mut levels: Vec<f64> = known.iter().map(|(_, mean)| mean / unit).collect();
        let ShopCourse { mut mean, shared, own } = mixed_model(level, &mut levels, |run, level| {
            Observed::of(known[run].0, level, unit, noise * (1.0 + rho) / (1.0 - rho), reach)
        });
        // However odd the runs were, a piece takes time.
        mean[LEVEL] = mean[LEVEL].max(LEAST_LEVEL);
        Self {
            unit: Some(unit),
            mean,
            shared,
            own,
            noise,
            noise_degrees,
            level_degrees: DEFAULT_RUNS + known.len() as f64,
            correlation,
            reach,
        }
    }

    /// With the printer's own estimate of the seconds of a piece in place of the level.
    #[must_use]
    pub fn with_guess(mut self, seconds: f64) -> Self {
        if !(seconds.is_finite() && seconds > 0.0) {
            return self;
        }
        let scale = 1.0 / self.mean[LEVEL];
        self.mean = self.mean.map(|effect| effect * scale);
        // A change takes its seconds, however long a piece takes.
        self.mean[CHANGE] *= self.unit.unwrap_or(seconds) / (seconds * scale);
        self.unit = Some(seconds);
        for term in 0..TERMS {
            self.shared[LEVEL][term] = 0.0;
            self.shared[term][LEVEL] = 0.0;
        }
        self.shared[LEVEL][LEVEL] = GUESS_SHARED * GUESS_ERROR * GUESS_ERROR;
        self.own[LEVEL] = (1.0 - GUESS_SHARED) * GUESS_ERROR * GUESS_ERROR;
        self.level_degrees = 4.0;
        self
    }

    /// Variance of a new run's coefficients around `mean`.
    pub(super) fn variance(&self) -> Matrix {
        let mut variance = self.shared;
        for (term, own) in self.own.iter().enumerate() {
            variance[term][term] += own;
        }
        variance
    }
}

/// How the times of single pieces vary.
struct Noise {
    /// One piece's variance.
    variance: f64,
    /// Its degrees of freedom.
    degrees: f64,
    /// The correlation of neighbours.
    correlation: Weights,
    /// Its mean.
    rho: f64,
}

/// The noise of runs, from the differences of gaps.
fn noise_of(runs: &[(&PaceSummary, f64)]) -> Noise {
    let relative = |run: &PaceSummary, mean: f64, lag: usize| f64::from(run.squared_differences[lag]) / (mean * mean);
    let (mut pairs, mut squares) = ([0.0; 2], [0.0; 2]);
    for (run, mean) in runs {
        for lag in [0, 1] {
            pairs[lag] += f64::from(run.pairs[lag]);
            squares[lag] += relative(run, *mean, lag);
        }
    }
    if pairs[1] < 1.0 || squares[0] <= 0.0 {
        let correlation = weights_unknown();
        return Noise { variance: NOISE * NOISE, degrees: NOISE_DEGREES, correlation, rho: 0.0 };
    }
    let ratio = (squares[1] / pairs[1]) / (squares[0] / pairs[0]);
    let (correlation, rho) = weights_from(estimate(ratio), pairs[1]);
    let of_pairs = |squares: f64, pairs: f64| squares / (2.0 * pairs * (1.0 - rho));
    let weight = NOISE_DEGREES / (NOISE_DEGREES + pairs[0]);
    let noise = weight * NOISE * NOISE + (1.0 - weight) * of_pairs(squares[0], pairs[0]);
    // Runs differ in it: the spread of its logarithm beyond what their few pieces explain (variance 3/n for
    // differences of neighbours).
    let (mut spread, mut count) = (0.0, 0.0);
    for (run, mean) in runs.iter().filter(|(run, _)| run.pairs[0] >= 4) {
        let pairs = f64::from(run.pairs[0]);
        let log = (of_pairs(relative(run, *mean, 0), pairs).max(1e-9) / noise).ln();
        spread += log * log - 3.0 / pairs;
        count += 1.0;
    }
    let between = ((DEFAULT_RUNS * 0.15 + spread.max(0.0)) / (DEFAULT_RUNS + count)).max(0.02);
    let degrees = 1.0 / (between / 2.0 + 1.0 / (NOISE_DEGREES + pairs[0]));
    Noise { variance: noise.max(1e-6), degrees: degrees.max(NOISE_DEGREES), correlation, rho }
}
