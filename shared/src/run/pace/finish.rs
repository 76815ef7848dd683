//! How long the pieces that are left will take: prediction intervals.

use super::student_t::{t_cdf, t_quantile};
use crate::run::Pace;
use crate::time::{Estimate, Millis, WallTime};

/// What is known about the time of one piece.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PieceTime {
    /// Mean in seconds per piece.
    pub mean: f64,
    /// Standard deviation of one piece's time in seconds.
    pub sd: f64,
    /// Standard error of `mean` in seconds.
    pub mean_error: f64,
    /// Degrees of freedom of `sd`.
    pub degrees_of_freedom: f64,
}

impl PieceTime {
    /// From a pace; `None` with fewer than two gaps, which have no deviation.
    pub fn of(pace: &Pace) -> Option<Self> {
        (pace.gaps >= 2).then(|| Self {
            mean: pace.mean,
            sd: pace.sd,
            mean_error: pace.sd / f64::from(pace.pieces).sqrt(),
            degrees_of_freedom: f64::from(pace.gaps - 1),
        })
    }

    /// Standard error in seconds of the time for `pieces` more: √(m·s² + m²·e²). With the mean's own error e
    /// = s/√n this is s·√(m + m²/n).
    pub fn error(&self, pieces: f64) -> f64 {
        (pieces * self.sd.powi(2) + (pieces * self.mean_error).powi(2)).sqrt()
    }
}

/// Prediction interval in seconds for the pieces that are left.
///
/// m·x̄ ± t(ν)·s·√(m + m²/n). Source: prediction of a sum of future observations, G. J. Hahn and W. Q.
/// Meeker, "Statistical Intervals", 1991, section 4.8; checked against
/// `tests/data/pace_prediction_intervals.csv`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TimeLeft {
    /// Expected time.
    pub expected: f64,
    /// Early end of the interval, never negative.
    pub low: f64,
    /// Late end of the interval.
    pub high: f64,
}

impl TimeLeft {
    /// The interval that contains the true time with probability `confidence` (0 to 1, exclusive).
    ///
    /// ```
    /// use lastpull_core::run::{PieceTime, TimeLeft};
    ///
    /// // Mean, deviation and quantile of `tests/data/pace_observed_gaps.csv`: 12 gaps, one more piece.
    /// let (mean, sd) = (43.641_667, 6.583_376);
    /// let piece_time = PieceTime { mean, sd, mean_error: sd / 12.0_f64.sqrt(), degrees_of_freedom: 11.0 };
    /// let left = TimeLeft::predict(&piece_time, 1, 0.8);
    /// assert!((left.low - 34.299).abs() < 0.001);
    /// assert!((left.high - 52.984).abs() < 0.001);
    /// ```
    pub fn predict(piece_time: &PieceTime, pieces: u32, confidence: f64) -> Self {
        Self::with_t_factor(piece_time, pieces, Self::t_factor(piece_time, confidence))
    }

    /// The t(ν) of a confidence: the same for any number of pieces, and costly to compute.
    pub(crate) fn t_factor(piece_time: &PieceTime, confidence: f64) -> f64 {
        t_quantile(0.5 + confidence / 2.0, piece_time.degrees_of_freedom)
    }

    /// The interval for a given [`t_factor`](Self::t_factor).
    pub(crate) fn with_t_factor(piece_time: &PieceTime, pieces: u32, reach: f64) -> Self {
        let pieces = f64::from(pieces);
        let expected = pieces * piece_time.mean;
        let reach = reach * piece_time.error(pieces);
        Self { expected, low: (expected - reach).max(0.0), high: expected + reach }
    }

    /// When this time ends if it begins at `start`.
    pub fn finish_from(self, start: WallTime) -> Estimate<WallTime> {
        let Self { expected, low, high } = self;
        Estimate { expected, low, high }.map(|seconds| start + Millis::from_seconds(seconds))
    }

    /// Probability that `pieces` more take no longer than `seconds`.
    pub fn chance_within(piece_time: &PieceTime, pieces: u32, seconds: f64) -> f64 {
        let expected = f64::from(pieces) * piece_time.mean;
        let error = piece_time.error(f64::from(pieces));
        if error <= 0.0 {
            return if expected <= seconds { 1.0 } else { 0.0 };
        }
        t_cdf((seconds - expected) / error, piece_time.degrees_of_freedom)
    }
}

/// Expected number of pieces in `seconds`: t/μ + (c² − 1)/2 with c = sd/mean, at least 0. Source: the renewal
/// theorem, D. R. Cox, "Renewal Theory", 1962; checked against `tests/data/pace_renewal_counts.csv`.
pub fn pieces_within(piece_time: &PieceTime, seconds: f64) -> f64 {
    let c = piece_time.sd / piece_time.mean;
    (seconds / piece_time.mean + (c * c - 1.0) / 2.0).max(0.0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use rand::SeedableRng;
    use rand::rngs::StdRng;
    use rand_distr::{Distribution, Gamma};

    fn rows(text: &str) -> Vec<Vec<&str>> {
        text.lines().skip(1).map(|row| row.split(',').collect()).collect()
    }

    fn number(cell: &str) -> f64 {
        cell.parse().unwrap()
    }

    /// Source: `tests/data/pace_prediction_intervals.csv`, from the gaps in `pace_observed_gaps.csv`.
    #[test]
    fn intervals_agree_with_the_computed_rows() {
        let seconds: Vec<f64> =
            rows(include_str!("../../../tests/data/pace_observed_gaps.csv")).iter().map(|row| number(row[0])).collect();
        let n = seconds.len() as f64;
        let mean = seconds.iter().sum::<f64>() / n;
        let sd = (seconds.iter().map(|x| (x - mean).powi(2)).sum::<f64>() / (n - 1.0)).sqrt();
        let piece_time = PieceTime { mean, sd, mean_error: sd / n.sqrt(), degrees_of_freedom: n - 1.0 };
        let mut read = 0;
        for row in rows(include_str!("../../../tests/data/pace_prediction_intervals.csv")) {
            let left = TimeLeft::predict(&piece_time, row[0].parse().unwrap(), number(row[1]));
            assert!((left.expected - number(row[3])).abs() < 1e-5, "{row:?}");
            assert!((left.low - number(row[4])).abs() < 1e-4, "{left:?} {row:?}");
            assert!((left.high - number(row[5])).abs() < 1e-4, "{left:?} {row:?}");
            read += 1;
        }
        assert_eq!(read, 16);
    }

    /// Source: `tests/data/pace_gamma_vs_normal.csv`. With mean and deviation known exactly, the normal
    /// column is matched, and the exact gamma time is missed by no more than the file says.
    #[test]
    fn a_known_pace_matches_the_normal_and_nears_the_exact_column() {
        for row in rows(include_str!("../../../tests/data/pace_gamma_vs_normal.csv")) {
            let (shape, scale) = (number(row[1]), number(row[2]));
            let piece_time =
                PieceTime { mean: shape * scale, sd: shape.sqrt() * scale, mean_error: 0.0, degrees_of_freedom: 1e7 };
            let quantile = number(row[4]);
            let left = TimeLeft::predict(&piece_time, row[3].parse().unwrap(), (quantile - 0.5).abs() * 2.0);
            let ours = if quantile < 0.5 { left.low } else { left.high };
            assert!((ours - number(row[6])).abs() < 1e-3, "{ours} {row:?}");
            let off = (ours / number(row[5]) - 1.0) * 100.0;
            assert!((off - number(row[7])).abs() < 0.01, "{off} {row:?}");
        }
    }

    /// Source: column `exact_mean_count` of `tests/data/pace_renewal_counts.csv`.
    #[test]
    fn pieces_within_a_time_agree_with_the_exact_counts() {
        for row in rows(include_str!("../../../tests/data/pace_renewal_counts.csv")) {
            let (shape, mean) = (number(row[0]), number(row[1]));
            let piece_time = PieceTime { mean, sd: mean / shape.sqrt(), mean_error: 0.0, degrees_of_freedom: 1e9 };
            let ours = pieces_within(&piece_time, number(row[2]));
            assert!((ours - number(row[3])).abs() < 1e-6, "{ours} {row:?}");
        }
    }

    /// Fraction of simulated gamma gaps in which the 80 % interval contains the true time.
    fn coverage(shape: f64, n: u32, m: u32, rng: &mut StdRng, trials: u32) -> f64 {
        let gamma = Gamma::new(shape, 40.0 / shape).unwrap();
        let hits = (0..trials)
            .filter(|_| {
                let seen: Vec<crate::run::PullGap> = (0..n)
                    .map(|_| crate::run::PullGap { seconds: gamma.sample(rng), pieces: 1, is_pause: false })
                    .collect();
                let piece_time = PieceTime::of(&Pace::of(&seen).unwrap()).unwrap();
                let truth: f64 = (0..m).map(|_| gamma.sample(rng)).sum();
                let left = TimeLeft::predict(&piece_time, m, 0.8);
                (left.low..=left.high).contains(&truth)
            })
            .count();
        hits as f64 / f64::from(trials)
    }

    #[test]
    fn the_80_percent_interval_covers_80_percent_from_five_gaps() {
        let mut rng = StdRng::seed_from_u64(20_261_125);
        for piece_time in [0.1, 0.25, 0.4_f64] {
            for n in [5, 6, 8, 12, 30] {
                for m in [1, 5, 20, 60] {
                    let covered = coverage(1.0 / (piece_time * piece_time), n, m, &mut rng, 4_000);
                    assert!((0.77..=0.83).contains(&covered), "piece_time {piece_time} n {n} m {m}: {covered}");
                }
            }
        }
    }

    /// Source: `tests/data/pace_interval_coverage.csv`; its own simulation error is about 0.005.
    #[test]
    fn coverage_agrees_with_the_published_simulation() {
        let mut rng = StdRng::seed_from_u64(5);
        for row in rows(include_str!("../../../tests/data/pace_interval_coverage.csv")) {
            let (n, m) = (row[2].parse().unwrap(), row[3].parse().unwrap());
            let covered = coverage(number(row[0]), n, m, &mut rng, 8_000);
            assert!((covered - number(row[5])).abs() < 0.02, "{covered} {row:?}");
        }
    }

    #[test]
    fn the_expected_time_is_met_with_probability_one_half() {
        let piece_time = PieceTime { mean: 40.0, sd: 8.0, mean_error: 2.5, degrees_of_freedom: 9.0 };
        assert!((TimeLeft::chance_within(&piece_time, 10, 400.0) - 0.5).abs() < 1e-12);
        assert!(TimeLeft::chance_within(&piece_time, 10, 600.0) > 0.99);
        let machine = PieceTime { sd: 0.0, mean_error: 0.0, ..piece_time };
        assert!(TimeLeft::chance_within(&machine, 10, 401.0) >= 1.0);
    }
}
