//! Stops and misprints to come: how many, and how long.
//!
//! Each comes at a rate per piece that differs from run to run: a gamma prior on the rate of a Poisson count,
//! so that the count to come is negative binomial (A. Gelman et al., "Bayesian Data Analysis", 3rd ed. 2013,
//! section 2.6; the weight between shop and run is the credibility of H. Bühlmann and E. Straub, 1970).

use super::own_and_shared::OwnAndShared;
use crate::run::PaceSummary;

/// A count over some pieces.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Counted {
    /// How often it happened.
    times: f64,
    /// In how many pieces.
    pieces: f64,
}

/// A rate per piece, with gamma-distributed doubt.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TroubleRate {
    /// Expected number per piece.
    pub rate: f64,
    /// Shape of the doubt about the shop's rate, which all runs share.
    shop_shape: f64,
    /// Shape of a run's own rate around the shop's.
    run_shape: f64,
}

/// What is assumed of a rate before anything is seen.
struct Assumed {
    rate: f64,
    shape: f64,
}

// Our own: a stop and a misprint in about a hundred pieces, weighing little.
const STOPS: Assumed = Assumed { rate: 0.0105, shape: 0.34 };
const MISPRINTS: Assumed = Assumed { rate: 0.01, shape: 0.6 };
/// Shape of a run's rate around the shop's until the runs tell. Our own.
const RUN_SHAPE: f64 = 2.0;
/// Runs that this weighs as much as.
const DEFAULT_RUNS: f64 = 3.0;
/// Seconds of a stop, their standard deviation as a fraction, and the stops that these weigh as much as. Our own.
const STOP_SECONDS: f64 = 240.0;
const STOP_SPREAD: f64 = 0.8;
const DEFAULT_STOPS: f64 = 2.0;

impl TroubleRate {
    fn learned(default: &Assumed, counts: impl Iterator<Item = Counted> + Clone) -> Self {
        let seen = counts.clone().filter(|count| count.pieces > 0.0);
        let (mut times, mut pieces, mut runs) = (0.0, 0.0, 0.0);
        for count in seen.clone() {
            times += count.times;
            pieces += count.pieces;
            runs += 1.0;
        }
        let shop_shape = default.shape + times;
        let rate = shop_shape / (default.shape / default.rate + pieces);
        // Method of moments: a run's (count − expected)² is expected + expected²/shape.
        let (mut excess, mut square) = (0.0, 0.0);
        for count in seen {
            let expected = rate * count.pieces;
            excess += (count.times - expected).powi(2) - expected;
            square += expected * expected;
        }
        let prior = DEFAULT_RUNS * (square + 1.0) / (runs + 1.0);
        let spread = (prior / RUN_SHAPE + excess).max(0.02 * prior) / (prior + square);
        Self { rate, shop_shape, run_shape: (1.0 / spread).clamp(0.3, 50.0) }
    }

    /// After the run's own count so far.
    fn after(&self, own: Counted) -> Self {
        let shape = self.shape();
        let together = shape + own.times;
        // The run's count moves the run's own rate and the shop's by their parts of the doubt.
        let grown = together / shape;
        Self {
            rate: together / (shape / self.rate + own.pieces),
            shop_shape: self.shop_shape * grown,
            run_shape: self.run_shape * grown,
        }
    }

    /// Shape of the whole doubt: squared relative deviations add.
    fn shape(&self) -> f64 {
        1.0 / (1.0 / self.shop_shape + 1.0 / self.run_shape)
    }

    /// The expected number in so many pieces.
    pub(super) fn expected(&self, pieces: f64) -> ExpectedNumber {
        let doubt = OwnAndShared { own: 1.0 / self.run_shape, shared: 1.0 / self.shop_shape };
        ExpectedNumber { mean: self.rate * pieces, doubt }
    }
}

/// An expected number of stops or misprints.
#[derive(Clone, Copy)]
pub(super) struct ExpectedNumber {
    pub(super) mean: f64,
    /// Squared relative doubt about it.
    pub(super) doubt: OwnAndShared,
}

/// How long a stop lasts, in seconds.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct StopTime {
    /// Of the next stop.
    pub(super) expected: f64,
    /// Standard deviation of one stop's.
    pub(super) deviation: f64,
    /// Standard error of `expected`.
    pub(super) error: f64,
}

/// What the shop's runs say about stops and misprints.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TroublePrior {
    /// Stops for trouble per piece pulled.
    pub stops: TroubleRate,
    /// Misprints per good piece.
    pub misprints: TroubleRate,
    /// How long a stop lasts.
    pub(super) stop: StopTime,
}

impl TroublePrior {
    /// From summaries of the shop's latest runs, alike or not; none is allowed.
    pub fn learned(runs: &[&PaceSummary]) -> Self {
        let stops = runs.iter().map(|run| Counted {
            times: f64::from(run.stops),
            pieces: f64::from((run.good + run.misprints).max(run.pieces)),
        });
        let misprints = runs.iter().map(|run| Counted { times: f64::from(run.misprints), pieces: f64::from(run.good) });
        let (mut count, mut seconds, mut squares) = (0.0, 0.0, 0.0);
        for run in runs {
            count += f64::from(run.stops);
            seconds += f64::from(run.stop_seconds);
            squares += f64::from(run.stop_squares);
        }
        let assumed = StopTime { expected: STOP_SECONDS, deviation: STOP_SPREAD * STOP_SECONDS, error: 0.0 };
        Self {
            stops: TroubleRate::learned(&STOPS, stops),
            misprints: TroubleRate::learned(&MISPRINTS, misprints),
            stop: assumed.after(DEFAULT_STOPS, count, seconds, squares),
        }
    }

    /// After the run's own stops (their seconds) in `pulled` pieces, and its misprints beside `good` pieces.
    #[must_use]
    pub fn after(mut self, stops: &[f64], pulled: u32, good: u32, misprints: u32) -> Self {
        let (seconds, squares) = stops.iter().fold((0.0, 0.0), |(sum, squares), s| (sum + s, squares + s * s));
        let weight = (self.stop.deviation / self.stop.error.max(1e-9)).powi(2);
        self.stop = self.stop.after(weight, stops.len() as f64, seconds, squares);
        self.stops = self.stops.after(Counted { times: stops.len() as f64, pieces: f64::from(pulled) });
        self.misprints = self.misprints.after(Counted { times: f64::from(misprints), pieces: f64::from(good) });
        self
    }
}

impl StopTime {
    /// After `count` more stops, from the sum of their seconds and that of the squares of these. What is known so far
    /// weighs as `weight` stops.
    fn after(self, weight: f64, count: f64, seconds: f64, squares: f64) -> Self {
        let mean = (weight * self.expected + seconds) / (weight + count);
        let around = squares - 2.0 * mean * seconds + count * mean * mean;
        let before = weight * (self.deviation.powi(2) + (mean - self.expected).powi(2));
        let deviation = ((before + around.max(0.0)) / (weight + count)).sqrt();
        Self { expected: mean, deviation, error: deviation / (weight + count).sqrt() }
    }
}
