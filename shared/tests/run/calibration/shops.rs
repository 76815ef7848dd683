//! Invented shops: runs with whatever a real day does to them.

use lastpull_core::run::{PaceSummary, WorkGap};
use rand::Rng;
use rand::rngs::StdRng;
use rand_distr::{Beta, Distribution, Gamma, StandardNormal};

/// What a shop's runs are like. Effects vary from run to run by a fifth or so.
#[derive(Clone, Copy, Debug)]
pub struct Habit {
    /// Range of the standard deviation of a piece's time over its mean.
    pub cv: (f64, f64),
    /// Correlation of neighbours.
    pub alike: f64,
    /// Whether each piece is like the last only, and not like the one before that.
    pub only_next: bool,
    /// By how much of a piece's time the first five pieces take longer.
    pub start: f64,
    /// Slower with every piece, as a fraction.
    pub drift: f64,
    /// Extra seconds at every twelfth piece, and whether the app is told of these.
    pub change: f64,
    pub told: bool,
    /// Range of the stops per piece, their mean seconds, and whether they vary.
    pub stops: (f64, f64),
    pub stop_seconds: f64,
    pub stops_vary: bool,
    /// Misprints per piece.
    pub misprints: f64,
    /// From the middle of the run on, slower or faster by about so much.
    pub shift: f64,
    /// One size takes longer than the other, in turn, by this fraction.
    pub in_turn: f64,
    /// Chance of a gap four times as long.
    pub long_gaps: f64,
    /// Pieces counted at once.
    pub at_once: u32,
    /// Range of the deviation of a run's level.
    pub level: (f64, f64),
}

/// A shop whose runs are level and its pieces independent.
pub const LEVEL: Habit = Habit {
    cv: (0.2, 0.6),
    alike: 0.0,
    only_next: false,
    start: 0.0,
    drift: 0.0,
    change: 0.0,
    told: false,
    stops: (0.0, 0.0),
    stop_seconds: 240.0,
    stops_vary: false,
    misprints: 0.0,
    shift: 0.0,
    in_turn: 0.0,
    long_gaps: 0.0,
    at_once: 1,
    level: (0.10, 0.15),
};

/// Seconds of a piece.
const SECONDS: f64 = 40.0;
/// Lengths of earlier runs.
const LENGTHS: [u32; 5] = [24, 36, 48, 72, 144];

/// One shop: what its runs have in common.
pub struct InventedShop {
    habit: Habit,
    cv: f64,
    level: f64,
    stops: f64,
}

/// A run as it will have gone.
pub struct InventedRun {
    /// Every gap, and whether its piece was spoiled.
    pub gaps: Vec<WorkGap>,
    pub spoiled: Vec<bool>,
    /// Stops: after which gap, and seconds.
    pub stops: Vec<(usize, f64)>,
}

fn between(rng: &mut StdRng, (low, high): (f64, f64)) -> f64 {
    low + (high - low) * rng.random::<f64>()
}

fn normal(rng: &mut StdRng) -> f64 {
    StandardNormal.sample(rng)
}

impl InventedShop {
    pub fn new(habit: Habit, rng: &mut StdRng) -> Self {
        let (cv, level) = (between(rng, habit.cv), between(rng, habit.level));
        Self { habit, cv, level, stops: between(rng, habit.stops) }
    }

    /// Summaries of so many ended runs.
    pub fn history(&self, runs: u32, rng: &mut StdRng) -> Vec<PaceSummary> {
        let length = |rng: &mut StdRng| LENGTHS[rng.random_range(0..LENGTHS.len())];
        (0..runs).map(|_| self.run(length(rng), rng).summary()).collect()
    }

    /// A run of so many good pieces.
    pub fn run(&self, good: u32, rng: &mut StdRng) -> InventedRun {
        let Habit { alike, only_next, misprints, at_once, change, told, .. } = self.habit;
        let level = SECONDS * (1.0 + self.level * normal(rng)).max(0.3);
        let start = self.habit.start * (1.0 + 0.2 * normal(rng));
        let drift = self.habit.drift * (1.0 + 0.25 * normal(rng));
        let shift = self.habit.shift * normal(rng).signum();
        let stop_rate = self.stops * Gamma::new(8.0, 0.125).unwrap().sample(rng);
        let shape = 1.0 / (self.cv * self.cv);
        let fresh = Gamma::new(shape, self.cv * self.cv).unwrap();
        // Gamma pieces of which each keeps a beta-distributed part of the last: correlation ρ, ρ², … (P. A. W.
        // Lewis, E. McKenzie and D. K. Hugus, Stochastic Models 5, 1989); or the last one's other part alone: ρ, 0.
        let kept = (alike > 0.0).then(|| Beta::new(shape * alike, shape * (1.0 - alike)).unwrap());
        let added = (alike > 0.0).then(|| Gamma::new(shape * (1.0 - alike), self.cv * self.cv).unwrap());
        let mut noise = fresh.sample(rng);
        let mut last_new = fresh.sample(rng);
        let mut run = InventedRun { gaps: Vec::new(), spoiled: Vec::new(), stops: Vec::new() };
        let (mut done, mut pieces, mut seconds, mut changes) = (0, 0, 0.0, 0);
        while done < good {
            let place = run.gaps.len() as u32 * at_once + pieces + 1;
            noise = match (&kept, &added) {
                _ if only_next => {
                    // (e + θ·e₋₁)/(1 + θ) has correlation θ/(1 + θ²) with the next; the deviation is made up.
                    let new = fresh.sample(rng);
                    let theta = (1.0 - (1.0 - 4.0 * alike * alike).sqrt()) / (2.0 * alike);
                    let mixed = 1.0 + ((new - 1.0) + theta * (last_new - 1.0)) / (1.0 + theta * theta).sqrt();
                    last_new = new;
                    mixed.max(0.02)
                }
                (Some(kept), Some(added)) => kept.sample(rng) * noise + added.sample(rng),
                _ => fresh.sample(rng),
            };
            let mut expected = level * (1.0 + drift * f64::from(place));
            if place <= 5 {
                expected *= 1.0 + start;
            }
            if place > good / 2 {
                expected *= 1.0 + shift;
            }
            if self.habit.in_turn > 0.0 {
                expected *= if place.is_multiple_of(2) { 1.0 + self.habit.in_turn } else { 1.0 - self.habit.in_turn };
            }
            let mut time = expected * noise;
            if self.habit.long_gaps > 0.0 && rng.random::<f64>() < self.habit.long_gaps {
                time *= 4.0;
            }
            if change > 0.0 && place.is_multiple_of(12) {
                time += change * (1.0 + 0.3 * normal(rng)).max(0.0);
                changes += u32::from(told);
            }
            seconds += time;
            pieces += 1;
            let spoiled = rng.random::<f64>() < misprints;
            done += u32::from(!spoiled);
            if pieces == at_once || done == good {
                run.gaps.push(WorkGap { seconds, pieces, changes, is_pause: false });
                run.spoiled.push(spoiled);
                (pieces, seconds, changes) = (0, 0.0, 0);
            }
            // A stop after the last piece holds nothing up.
            if rng.random::<f64>() < stop_rate && done < good {
                let lasts = if self.habit.stops_vary { Gamma::new(1.5, 1.0 / 1.5).unwrap().sample(rng) } else { 1.0 };
                run.stops.push((run.gaps.len(), self.habit.stop_seconds * lasts));
            }
        }
        run
    }
}

impl InventedRun {
    fn summary(&self) -> PaceSummary {
        let stops: Vec<f64> = self.stops.iter().map(|(_, seconds)| *seconds).collect();
        let misprints = self.spoiled.iter().filter(|spoiled| **spoiled).count() as u32;
        let pieces: u32 = self.gaps.iter().map(|gap| gap.pieces).sum();
        PaceSummary::of(&self.gaps, &stops, pieces - misprints, misprints)
    }

    /// Seconds of the stops up to a gap, and after it.
    pub fn stops_by(&self, gaps: usize) -> (Vec<f64>, f64) {
        let before = self.stops.iter().filter(|(after, _)| *after <= gaps).map(|(_, seconds)| *seconds).collect();
        (before, self.stops.iter().filter(|(after, _)| *after > gaps).map(|(_, seconds)| seconds).sum())
    }
}
