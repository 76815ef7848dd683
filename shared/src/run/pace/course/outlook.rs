//! When further pieces will be pulled: work, misprints and stops together.

use super::super::student_t::t_cdf_near;
use super::fit::{Course, Work};
use super::own_and_shared::OwnAndShared;
use super::trouble::{StopTime, TroublePrior};
use crate::time::Estimate;

/// The distribution of the seconds that further pieces take at the press.
///
/// Work and misprints are Student's t; the number of stops is negative binomial, and each adds its own time:
/// the whole is a mixture over the number of stops. Counted from the latest pull on: what has been spent on the
/// piece on the platen since, and a stop that still lasts, are the caller's to take off and add.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Outlook {
    /// Work, with misprints to be made up for.
    pub work: Work,
    /// Expected number of stops.
    pub stops: f64,
    /// Squared relative doubt about that number.
    stops_doubt: OwnAndShared,
    /// How long each lasts.
    stop: StopTime,
}

/// Numbers of stops that are looked at one by one; larger ones in groups that grow.
const ONE_BY_ONE: f64 = 3.0;
/// Most numbers and groups of numbers.
const MOST_GROUPS: usize = 32;
/// How near to the chance asked for is near enough.
const NEAR_ENOUGH: f64 = 1e-5;
/// Chance left out at the end of their distribution.
const NEGLIGIBLE: f64 = 3e-4;

impl Outlook {
    /// For `good` more good pieces with `changes` of size or pile among them. `trouble` is the shop's
    /// [`after`](TroublePrior::after) the run's own.
    pub fn of(course: &Course, trouble: &TroublePrior, good: u32, changes: u32) -> Self {
        let good = f64::from(good);
        let misprints = trouble.misprints.expected(good);
        let spoiled = misprints.mean;
        let mut work = course.work(good + spoiled, f64::from(changes));
        // Each spoiled piece takes a piece's time once more.
        let each = work.mean / (good + spoiled).max(1.0);
        work.own_variance += each * each * (spoiled + spoiled * spoiled * misprints.doubt.own);
        work.shared_deviation = work.shared_deviation.hypot(each * spoiled * misprints.doubt.shared.sqrt());
        let stops = trouble.stops.expected(good + spoiled);
        Self { work, stops: stops.mean, stops_doubt: stops.doubt, stop: trouble.stop }
    }

    /// The combined time of this run and the next. Standard deviations of shared errors add; variances of independent ones
    /// add.
    #[must_use]
    pub fn and(&self, other: &Self) -> Self {
        let stops = self.stops + other.stops;
        let part = |outlook: &Self| if stops > 0.0 { outlook.stops / stops } else { 0.5 };
        let parts = [(self, part(self)), (other, part(other))];
        let weighted = |of: &dyn Fn(&Self) -> f64| parts.iter().map(|(outlook, part)| part * of(outlook)).sum::<f64>();
        let stops_doubt = OwnAndShared {
            own: parts.iter().map(|(outlook, part)| part * part * outlook.stops_doubt.own).sum(),
            shared: weighted(&|outlook| outlook.stops_doubt.shared.sqrt()).powi(2),
        };
        let stop = StopTime {
            expected: weighted(&|outlook| outlook.stop.expected),
            deviation: weighted(&|outlook| outlook.stop.deviation),
            error: weighted(&|outlook| outlook.stop.error),
        };
        Self { work: self.work.and(&other.work), stops, stops_doubt, stop }
    }

    /// Expected seconds.
    pub fn mean(&self) -> f64 {
        self.work.mean + self.stops * self.stop.expected
    }

    /// Variance of the seconds.
    pub fn variances(&self) -> OwnAndShared {
        let StopTime { expected: each, deviation, error } = self.stop;
        let (number, doubt) = (self.stops * self.stops, self.stops_doubt);
        let own = self.stops * (each * each + deviation * deviation) + number * each * each * doubt.own;
        let shared = (number * (each * each * doubt.shared + error * error)).sqrt() + self.work.shared_deviation;
        OwnAndShared { own: self.work.own_variance + own, shared: shared * shared }
    }

    /// Probability that it takes no longer than `seconds`.
    pub fn chance_within(&self, seconds: f64) -> f64 {
        self.mixture().chance_within(seconds)
    }

    /// The seconds within which it is done with probability `chance` (0 to 1, exclusive); never negative.
    pub fn quantile(&self, chance: f64) -> f64 {
        self.mixture().quantile(chance)
    }

    /// The interval that contains the true time with probability `confidence` (0 to 1, exclusive), around the
    /// median: the time is over and under it equally often. (Rare long stops can put the mean beyond either end.)
    pub fn interval(&self, confidence: f64) -> Estimate<f64> {
        let mixture = self.mixture();
        let [low, expected, high] =
            [0.5 - confidence / 2.0, 0.5, 0.5 + confidence / 2.0].map(|chance| mixture.quantile(chance));
        Estimate { expected: expected.max(low), low, high: high.max(expected) }
    }

    fn mixture(&self) -> Mixture {
        let variance = self.variances();
        let mut mixture = Mixture {
            parts: [Part::default(); MOST_GROUPS],
            count: 0,
            degrees: self.work.degrees_of_freedom.max(1.0),
            mean: self.mean(),
            spread: (variance.own + variance.shared).sqrt(),
        };
        // Negative binomial: p₀ = (s/(s + μ))^s, p(k+1) = p(k)·(s + k)/(k + 1)·μ/(s + μ).
        let shape = 1.0 / (self.stops_doubt.own + self.stops_doubt.shared).max(1e-9);
        let share = self.stops / (shape + self.stops);
        let (mut number, mut chance) = (0.0, (shape * (1.0 - share).ln()).exp());
        let mut left: f64 = 1.0;
        while left > NEGLIGIBLE && mixture.count < MOST_GROUPS {
            let size = if number < ONE_BY_ONE { 1 } else { 1 + (number / 2.0) as u32 };
            // Chance, mean and variance of the number in this group.
            let (mut sum, mut first, mut second) = (0.0, 0.0, 0.0);
            for _ in 0..size {
                sum += chance;
                first += chance * number;
                second += chance * number * number;
                chance *= (shape + number) / (number + 1.0) * share;
                number += 1.0;
            }
            left -= sum;
            if sum > 0.0 {
                mixture.parts[mixture.count] = self.part(sum, first / sum, second / sum - (first / sum).powi(2));
                mixture.count += 1;
            }
            if number > 1e6 {
                break;
            }
        }
        // What is left out counts with the largest number.
        mixture.parts[mixture.count.saturating_sub(1)].chance += left;
        mixture
    }

    fn part(&self, chance: f64, number: f64, variance: f64) -> Part {
        let StopTime { expected: each, deviation, error } = self.stop;
        let stops = number * deviation * deviation + (number * error).powi(2) + variance * each * each;
        Part { chance, mean: self.work.mean + number * each, deviation: (self.work.variance() + stops).max(0.0).sqrt() }
    }
}

/// The time with some number of stops.
#[derive(Clone, Copy, Default)]
struct Part {
    chance: f64,
    mean: f64,
    deviation: f64,
}

struct Mixture {
    parts: [Part; MOST_GROUPS],
    count: usize,
    degrees: f64,
    mean: f64,
    spread: f64,
}

impl Mixture {
    fn chance_within(&self, seconds: f64) -> f64 {
        let within = |part: &Part| match part.deviation {
            deviation if deviation > 0.0 => t_cdf_near((seconds - part.mean) / deviation, self.degrees),
            _ if part.mean <= seconds => 1.0,
            _ => 0.0,
        };
        self.parts[..self.count].iter().map(|part| part.chance * within(part)).sum()
    }

    /// Regula falsi with the Illinois rule, as for Student's t, in a bracket that grows.
    fn quantile(&self, chance: f64) -> f64 {
        let spread = self.spread.max(1e-6);
        let off = |seconds: f64| self.chance_within(seconds) - chance;
        let (mut low, mut high) = (self.mean - 2.0 * spread, self.mean + 2.0 * spread);
        let (mut at_low, mut at_high) = (off(low), off(high));
        let mut step = 2.0 * spread;
        while at_low > 0.0 && low > 0.0 {
            low -= step;
            at_low = off(low);
            step *= 2.0;
        }
        if at_low > 0.0 {
            return 0.0;
        }
        while at_high < 0.0 && step < 1e12 {
            high += step;
            at_high = off(high);
            step *= 2.0;
        }
        for _ in 0..100 {
            if high - low < 1e-4 * spread {
                break;
            }
            let mut next = (low * at_high - high * at_low) / (at_high - at_low);
            if !(next > low && next < high) {
                next = f64::midpoint(low, high);
            }
            let at = off(next);
            if at.abs() < NEAR_ENOUGH {
                return next.max(0.0);
            }
            if (at > 0.0) == (at_high > 0.0) {
                (high, at_high) = (next, at);
                at_low /= 2.0;
            } else {
                (low, at_low) = (next, at);
                at_high /= 2.0;
            }
        }
        f64::midpoint(low, high).max(0.0)
    }
}
