//! A run's course from its gaps so far, and the time of the pieces to come.
//!
//! The time of a gap is linear in the run's coefficients, with noise that its neighbours share by a
//! correlation ρ. For each ρ of a short list the coefficients and the noise have a conjugate
//! normal-inverse-gamma prior and so a closed-form posterior after each gap (A. Gelman et al., "Bayesian Data
//! Analysis", 3rd ed. 2013, chapter 14; a gap minus ρ times the one before it has independent noise, S. J.
//! Prais and C. B. Winsten, 1954). The list is weighed by how likely each ρ makes what was seen: a
//! multi-process model, class I (M. West and J. Harrison, "Bayesian Forecasting and Dynamic Models", 2nd ed.
//! 1997, chapter 12).

use super::chains::{Chains, Row};
use super::correlation::GRID;
use super::matrix::{Matrix, TERMS, Vector, dot, inverse, times};
use super::prior::CoursePrior;
use super::terms::{CHANGE, LEVEL, START, terms};
use crate::run::WorkGap;

/// A run's course after its gaps so far.
#[derive(Clone, Debug, PartialEq)]
pub struct Course {
    unit: f64,
    /// Pieces timed.
    done: f64,
    /// Pieces that are counted at once, on average.
    at_once: f64,
    prior: CoursePrior,
    /// Gaps used.
    gaps: u32,
    noise_degrees: f64,
    /// The prior's precision, in units of the noise's.
    prior_precision: Matrix,
    states: [State; GRID.len()],
}

/// The posterior under one correlation.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
struct State {
    weight: f64,
    /// Coefficients as deviations from the prior's mean.
    off: Vector,
    /// Their variance, in units of the noise's.
    variance: Matrix,
    /// The noise's variance.
    noise: f64,
    /// The latest gap: its terms, and how far it was from expected, in standard measure.
    last: Vector,
    last_off: f64,
}

/// The time of further pieces of one run, in seconds.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Work {
    /// Expected seconds.
    pub mean: f64,
    /// Variance that other runs do not share.
    pub own_variance: f64,
    /// Standard deviation of the error that every run forecast from the same earlier runs shares.
    pub shared_deviation: f64,
    /// Degrees of freedom of the whole.
    pub degrees_of_freedom: f64,
}

impl Work {
    /// The whole variance.
    pub fn variance(&self) -> f64 {
        self.own_variance + self.shared_deviation.powi(2)
    }

    /// This and another run's. Degrees of freedom as in [`Course::work`].
    pub(super) fn and(&self, other: &Self) -> Self {
        let square = |work: &Self| work.variance().powi(2) / work.degrees_of_freedom;
        let squares = square(self) + square(other);
        let whole = self.variance() + other.variance();
        Self {
            mean: self.mean + other.mean,
            own_variance: self.own_variance + other.own_variance,
            shared_deviation: self.shared_deviation + other.shared_deviation,
            degrees_of_freedom: if squares > 0.0 { whole.powi(2) / squares } else { self.degrees_of_freedom },
        }
    }
}

impl Course {
    /// The course after these gaps, the oldest first. `None` if nothing is known yet: no level from earlier
    /// runs or a guess, and fewer than two gaps.
    pub fn of(prior: &CoursePrior, gaps: &[WorkGap]) -> Option<Self> {
        let counts = || gaps.iter().filter(|gap| gap.counts());
        let used = counts().count();
        let unit = match prior.unit {
            Some(unit) => unit,
            None if used < 2 => return None,
            None => crude_level(prior, gaps).filter(|level| *level > 0.0)?,
        };
        let at_once = counts().map(|gap| f64::from(gap.pieces)).sum::<f64>() / (used.max(1) as f64);
        // A vague level takes one gap to be found.
        let noise_degrees = prior.noise_degrees - if prior.unit.is_none() { 1.0 } else { 0.0 };
        let mut course = Self {
            unit,
            done: gaps.iter().map(|gap| f64::from(gap.pieces)).sum(),
            at_once: at_once.max(1.0),
            prior: prior.clone(),
            gaps: used as u32,
            noise_degrees: noise_degrees + used as f64,
            prior_precision: [[0.0; TERMS]; TERMS],
            states: [State::default(); GRID.len()],
        };
        // The prior of the coefficients does not hang on the noise; its conjugate form does, by a first look.
        let noise = course.crude_noise(gaps);
        course.prior_precision = inverse(&prior.variance()).0.map(|row| row.map(|cell| cell * noise));
        course.learn(gaps, noise_degrees);
        Some(course)
    }

    /// Gaps used.
    pub fn gaps(&self) -> u32 {
        self.gaps
    }

    /// The noise's variance from the prior and the differences of neighbouring gaps.
    fn crude_noise(&self, gaps: &[WorkGap]) -> f64 {
        let (mut done, mut before, mut squares, mut pairs) = (0.0, None::<f64>, 0.0, 0.0);
        for gap in gaps {
            let pieces = f64::from(gap.pieces);
            let y = gap.counts().then(|| self.row(done, pieces, f64::from(gap.changes), gap.seconds).y);
            done += pieces;
            if let Some((y, before)) = y.zip(before) {
                squares += (y - before).powi(2) / 2.0;
                pairs += 1.0;
            }
            before = y;
        }
        (self.prior.noise_degrees * self.prior.noise + squares) / (self.prior.noise_degrees + pairs)
    }

    fn learn(&mut self, gaps: &[WorkGap], noise_degrees: f64) {
        let mut chains = Chains::default();
        let mut done = 0.0;
        for gap in gaps {
            let pieces = f64::from(gap.pieces);
            if gap.counts() {
                chains.add(self.row(done, pieces, f64::from(gap.changes), gap.seconds));
            } else {
                // A pause breaks the chain.
                chains.end();
            }
            done += pieces;
        }
        let latest = chains.latest;
        chains.end();
        let mut log_chance = [0.0; GRID.len()];
        for ((at, state), rho) in self.states.iter_mut().enumerate().zip(GRID) {
            let (mut precision, pull, squares) = chains.with_correlation(rho);
            for (row, prior) in precision.iter_mut().zip(&self.prior_precision) {
                row.iter_mut().zip(prior).for_each(|(cell, prior)| *cell += prior);
            }
            let squares = squares + noise_degrees * self.prior.noise;
            let (variance, log_determinant) = inverse(&precision);
            let off = times(&variance, &pull);
            let rest = (squares - dot(&off, &pull)).max(1e-12);
            let (last, last_off) = latest.map_or(([0.0; TERMS], 0.0), |row| (row.x, row.y - dot(&row.x, &off)));
            *state = State { weight: 0.0, off, variance, noise: rest / self.noise_degrees, last, last_off };
            log_chance[at] = -0.5 * chains.pairs * (1.0 - rho * rho).ln()
                - 0.5 * log_determinant
                - 0.5 * self.noise_degrees * rest.ln();
        }
        let best = log_chance.iter().copied().fold(f64::MIN, f64::max);
        for (at, state) in self.states.iter_mut().enumerate() {
            state.weight = self.prior.correlation[at] * (log_chance[at] - best).exp();
        }
        let sum: f64 = self.states.iter().map(|state| state.weight).sum();
        self.states.iter_mut().for_each(|state| state.weight /= sum);
    }

    /// The terms of some pieces: the level with its expected start and drift, and deviations from these.
    fn terms(&self, done: f64, pieces: f64, changes: f64) -> Vector {
        let mut x = terms(done, pieces, changes, self.prior.reach);
        x[LEVEL] = level_terms(&self.prior, &x);
        x
    }

    /// What the prior expects of pieces with these terms, in units.
    fn expected(&self, x: &Vector) -> f64 {
        self.prior.mean[LEVEL] * x[LEVEL] + self.prior.mean[CHANGE] * x[CHANGE]
    }

    fn row(&self, done: f64, pieces: f64, changes: f64, seconds: f64) -> Row {
        let x = self.terms(done, pieces, changes);
        let scale = 1.0 / (pieces.sqrt() * self.prior.mean[LEVEL] * x[LEVEL] / pieces).max(1e-9);
        let y = (seconds / self.unit - self.expected(&x)) * scale;
        Row { x: x.map(|x| x * scale), y }
    }

    /// The time of `pieces` more (which may be a fraction) with `changes` of size or pile among them.
    pub fn work(&self, pieces: f64, changes: f64) -> Work {
        if pieces <= 0.0 {
            return Work {
                mean: 0.0,
                own_variance: 0.0,
                shared_deviation: 0.0,
                degrees_of_freedom: self.noise_degrees,
            };
        }
        let x = self.terms(self.done, pieces, changes);
        // A piece's standard measure, and how many gaps of the usual size are to come.
        let piece = self.prior.mean[LEVEL] * x[LEVEL] / pieces;
        let gap = self.at_once.min(pieces);
        let scale = gap.sqrt() * piece;
        let coming = pieces / gap;
        let (mut mean, mut shared, mut from_noise, mut from_course) = (0.0, 0.0, 0.0, 0.0);
        let mut means = [0.0; GRID.len()];
        for (at, (state, rho)) in self.states.iter().zip(GRID).enumerate() {
            let to_come = ToCome::of(rho, coming);
            let carried = to_come.carried * scale;
            let reach: Vector = std::array::from_fn(|term| x[term] - carried * state.last[term]);
            let course = times(&state.variance, &reach);
            means[at] = dot(&x, &state.off) + carried * state.last_off;
            mean += state.weight * means[at];
            from_noise += state.weight * state.noise * scale * scale * to_come.variance;
            from_course += state.weight * state.noise * dot(&reach, &course);
            // How far an error of the prior's mean moves the forecast.
            let moves = times(&self.prior_precision, &course);
            shared += state.weight * dot(&moves, &times(&self.prior.shared, &moves));
        }
        let from_correlation: f64 =
            self.states.iter().zip(means).map(|(state, own)| state.weight * (own - mean).powi(2)).sum();
        let variance = from_noise + from_course + from_correlation;
        let unit = self.unit;
        Work {
            mean: ((self.expected(&x) + mean) * unit).max(0.0),
            own_variance: (variance - shared).max(0.0) * unit * unit,
            shared_deviation: shared.min(variance).sqrt() * unit,
            degrees_of_freedom: self.degrees(from_course, from_noise + from_correlation),
        }
    }

    /// Degrees of freedom of a sum of variances, each with its own (F. E. Satterthwaite, Biometrics Bulletin 2,
    /// 1946).
    fn degrees(&self, from_course: f64, from_noise: f64) -> f64 {
        let course_degrees = match self.prior.unit {
            Some(_) => self.prior.level_degrees + f64::from(self.gaps),
            None => self.noise_degrees,
        };
        let square = from_course.powi(2) / course_degrees + from_noise.powi(2) / self.noise_degrees;
        if square > 0.0 { (from_course + from_noise).powi(2) / square } else { self.noise_degrees }
    }
}

/// What the level's coefficient is multiplied by: its pieces with the start and drift expected of them.
fn level_terms(prior: &CoursePrior, x: &Vector) -> f64 {
    let level = prior.mean[LEVEL];
    let effects: f64 = (START..CHANGE).map(|term| prior.mean[term] / level * x[term]).sum();
    (x[LEVEL] + effects).max(0.1 * x[LEVEL])
}

/// Seconds per settled piece from the gaps alone.
fn crude_level(prior: &CoursePrior, gaps: &[WorkGap]) -> Option<f64> {
    let (mut done, mut pieces, mut seconds) = (0.0, 0.0, 0.0);
    for gap in gaps {
        let more = f64::from(gap.pieces);
        if gap.counts() {
            pieces += level_terms(prior, &terms(done, more, 0.0, prior.reach));
            seconds += gap.seconds;
        }
        done += more;
    }
    (pieces > 0.0).then(|| seconds / pieces)
}

/// The sum of the errors of gaps to come.
struct ToCome {
    /// By how much the latest gap's error carries over to the sum, ρ(1 − ρ^q)/(1 − ρ).
    carried: f64,
    /// The variance of the rest of the sum.
    variance: f64,
}

impl ToCome {
    /// Of `gaps` to come with correlation ρ.
    fn of(rho: f64, gaps: f64) -> Self {
        let whole = gaps.round().max(1.0) as i32;
        let (power, left) = (rho.powi(whole), 1.0 - rho);
        let carried = rho * (1.0 - power) / left;
        // Σ (1 − ρⁱ)²/(1 − ρ)² over i = 1..q, times the variance 1 − ρ² of what is new in each.
        let sum = gaps - 2.0 * carried + rho * rho * (1.0 - power * power) / (1.0 - rho * rho);
        Self { carried, variance: ((1.0 + rho) / left * sum).max(0.0) }
    }
}
