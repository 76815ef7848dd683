//! What was said, and what happened.

use super::shops::{Habit, InventedRun, InventedShop};
use crate::run::student_t::t_quantile;
use lastpull_core::run::{Course, CoursePrior, Outlook, PaceSummary, RunSimilarity, TroublePrior};
use lastpull_core::time::Estimate;
use rand::rngs::StdRng;
use rand::{Rng, SeedableRng};

/// What is counted over many invented shops.
#[derive(Clone, Debug, Default)]
pub struct Tally {
    forecasts: f64,
    covered: f64,
    below: f64,
    above: f64,
    /// Sums of the widths of this interval and of m·x̄ ± t·s·√(m + m²/n).
    width: f64,
    plain_width: f64,
    /// By tenths of the stated chance of closing: how often stated, its sum, how often it was made.
    bins: [(f64, f64, f64); 10],
}

impl Tally {
    fn add(&mut self, outlook: &Outlook, took: f64, plain_width: Option<f64>, rng: &mut StdRng) {
        let Estimate { expected, low, high } = outlook.interval(0.8);
        assert!(0.0 <= low && low <= expected && expected <= high && high.is_finite(), "{outlook:?}");
        self.forecasts += 1.0;
        self.below += f64::from(u8::from(took < low));
        self.above += f64::from(u8::from(took > high));
        self.covered += f64::from(u8::from((low..=high).contains(&took)));
        self.width += high - low;
        self.plain_width += plain_width.unwrap_or(high - low);
        let closing = expected + (high - low) * (1.6 * rng.random::<f64>() - 0.8);
        let stated = outlook.chance_within(closing);
        let bin = &mut self.bins[((stated * 10.0) as usize).min(9)];
        bin.0 += 1.0;
        bin.1 += stated;
        bin.2 += f64::from(u8::from(took <= closing));
    }

    pub fn merge(&mut self, other: &Self) {
        self.forecasts += other.forecasts;
        self.covered += other.covered;
        self.below += other.below;
        self.above += other.above;
        self.width += other.width;
        self.plain_width += other.plain_width;
        for (bin, more) in self.bins.iter_mut().zip(other.bins) {
            *bin = (bin.0 + more.0, bin.1 + more.1, bin.2 + more.2);
        }
    }

    /// Part of the forecasts whose 80 % interval held.
    pub fn coverage(&self) -> f64 {
        self.covered / self.forecasts
    }

    /// Mean width over the plain formula's.
    pub fn width(&self) -> f64 {
        self.width / self.plain_width
    }

    /// Largest difference between stated and observed chance in a tenth with cases from at least 200 shops: each
    /// shop is asked up to three times.
    pub fn worst_chance(&self) -> f64 {
        let enough = self.bins.iter().filter(|bin| bin.0 >= 600.0);
        enough.map(|(cases, stated, made)| ((stated - made) / cases).abs()).fold(0.0, f64::max)
    }

    /// Largest difference between stated and observed chance in any tenth, less two and a half standard errors of what
    /// so few shops show: a shop's three answers count as one.
    pub fn chance_off_beyond_doubt(&self) -> f64 {
        let asked = self.bins.iter().filter(|bin| bin.0 > 0.0);
        let off = asked.map(|(cases, stated, made)| {
            let said = stated / cases;
            ((stated - made) / cases).abs() - 2.5 * (3.0 * said * (1.0 - said) / cases).sqrt()
        });
        off.fold(0.0, f64::max)
    }

    /// All of it in one line.
    pub fn line(&self) -> String {
        format!(
            "{:.3} ({:.2} early, {:.2} late) width {:.2} chance off by {:.3}",
            self.coverage(),
            self.below / self.forecasts,
            self.above / self.forecasts,
            self.width(),
            self.worst_chance()
        )
    }
}

/// The forecast after `gaps` gaps, and how long the rest took.
fn forecast(course: &CoursePrior, trouble: &TroublePrior, run: &InventedRun, gaps: usize) -> Option<(Outlook, f64)> {
    let (seen, rest) = run.gaps.split_at(gaps);
    let pulled: u32 = seen.iter().map(|gap| gap.pieces).sum();
    let misprints = run.spoiled[..gaps].iter().filter(|spoiled| **spoiled).count() as u32;
    let left: u32 = rest.iter().map(|gap| gap.pieces).sum::<u32>()
        - run.spoiled[gaps..].iter().filter(|spoiled| **spoiled).count() as u32;
    let changes = rest.iter().map(|gap| gap.changes).sum();
    let (stopped, to_stop) = run.stops_by(gaps);
    let trouble = trouble.after(&stopped, pulled, pulled - misprints, misprints);
    let outlook = Outlook::of(&Course::of(course, seen)?, &trouble, left, changes);
    Some((outlook, rest.iter().map(|gap| gap.seconds).sum::<f64>() + to_stop))
}

/// Width of m·x̄ ± t·s·√(m + m²/n) at 80 %.
fn plain_width(run: &InventedRun, gaps: usize) -> f64 {
    let seen = &run.gaps[..gaps];
    let (n, pieces) = (gaps as f64, seen.iter().map(|gap| f64::from(gap.pieces)).sum::<f64>());
    let mean = seen.iter().map(|gap| gap.seconds).sum::<f64>() / pieces;
    let square = |gap: &lastpull_core::run::WorkGap| {
        let k = f64::from(gap.pieces);
        (gap.seconds - k * mean).powi(2) / k
    };
    let sd = (seen.iter().map(square).sum::<f64>() / (n - 1.0)).sqrt();
    let left: f64 = run.gaps[gaps..].iter().map(|gap| f64::from(gap.pieces)).sum();
    2.0 * t_quantile(0.9, n - 1.0) * sd * (left + left * left / pieces).sqrt()
}

fn priors(history: &[PaceSummary]) -> (CoursePrior, TroublePrior) {
    let runs: Vec<&PaceSummary> = history.iter().collect();
    (CoursePrior::learned(&runs, RunSimilarity::Alike), TroublePrior::learned(&runs))
}

/// Pieces of the run, gaps counted, and what came of it.
pub type Cell = (u32, usize, Tally);

/// Pieces of the run.
pub const LENGTHS: [u32; 2] = [36, 144];

/// Over so many invented shops of a habit: for each length of the run and each number of gaps counted. With
/// `history`, each has six to ten earlier runs.
pub fn tally(habit: Habit, history: bool, counted: &[usize], shops: u32, seed: u64) -> Vec<Cell> {
    let mut rng = StdRng::seed_from_u64(seed);
    let mut cells: Vec<Cell> =
        LENGTHS.iter().flat_map(|length| counted.iter().map(|gaps| (*length, *gaps, Tally::default()))).collect();
    for length in LENGTHS {
        for _ in 0..shops {
            let shop = InventedShop::new(habit, &mut rng);
            let runs = if history { rng.random_range(6..=10) } else { 0 };
            let (course, trouble) = priors(&shop.history(runs, &mut rng));
            let run = shop.run(length, &mut rng);
            for (_, gaps, tally) in cells.iter_mut().filter(|cell| cell.0 == length) {
                if *gaps + 1 >= run.gaps.len() {
                    continue;
                }
                let (outlook, took) = forecast(&course, &trouble, &run, *gaps).unwrap();
                let plain = (*gaps > 1).then(|| plain_width(&run, *gaps));
                tally.add(&outlook, took, plain, &mut rng);
            }
        }
    }
    cells
}

/// The last of five runs that all wait, from the shop's same earlier runs.
pub fn waiting(habit: Habit, earlier: u32, shops: u32, seed: u64) -> Tally {
    let mut rng = StdRng::seed_from_u64(seed);
    let mut tally = Tally::default();
    for _ in 0..shops {
        let shop = InventedShop::new(habit, &mut rng);
        let (course, trouble) = priors(&shop.history(earlier, &mut rng));
        let mut sum: Option<(Outlook, f64)> = None;
        for _ in 0..5 {
            let length = LENGTHS[rng.random_range(0..2)];
            let run = shop.run(length, &mut rng);
            let (outlook, took) = forecast(&course, &trouble, &run, 0).unwrap();
            sum = Some(sum.map_or((outlook, took), |(before, so_far)| (before.and(&outlook), so_far + took)));
        }
        let (outlook, took) = sum.unwrap();
        tally.add(&outlook, took, None, &mut rng);
    }
    tally
}
