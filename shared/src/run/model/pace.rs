//! How fast is this run going? Pace from the times of the counts, without the stops.

use super::{Pull, Stop};
use crate::codec::Encode;
use crate::time::{Millis, WallTime};

/// The working time from one count to the next.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PullGap {
    /// Seconds, without marked stops.
    pub seconds: f64,
    /// Pieces counted at its end.
    pub pieces: u32,
    /// Whether it is so long that somebody must have forgotten to mark a stop.
    pub is_pause: bool,
}

/// A gap between pulls longer than this, in seconds, without a marked stop is a pause that somebody forgot to
/// mark, if it is also far longer than the run's other gaps. Our own rule.
pub const UNMARKED_PAUSE_SECONDS: f64 = 300.0;

/// A gap this many times the run's median gap may be an unmarked pause.
const PAUSE_RATIO: f64 = 6.0;

/// The gaps between pulls, without the stops and with unmarked pauses flagged.
pub fn pull_gaps(pulls: &[Pull], stops: &[Stop]) -> Vec<PullGap> {
    let times = steady_times(pulls);
    let mut gaps: Vec<PullGap> = (1..pulls.len())
        .map(|at| {
            let (from, to) = (times[at - 1], times[at]);
            let stood: Millis = stops.iter().map(|stop| stop.overlap(from, to)).sum();
            let seconds = (to.since(from) - stood).seconds();
            PullGap { seconds, pieces: pulls[at].pieces, is_pause: false }
        })
        .collect();
    let each = |gap: &PullGap| gap.seconds / f64::from(gap.pieces.max(1));
    if gaps.iter().any(|gap| each(gap) > UNMARKED_PAUSE_SECONDS) {
        // The bit patterns of non-negative floats sort like the floats.
        let mut sorted: Vec<u64> = gaps.iter().map(|gap| each(gap).to_bits()).collect();
        sorted.sort_unstable();
        let middle = f64::from_bits(sorted[(sorted.len() - 1) / 2]);
        for gap in &mut gaps {
            gap.is_pause = each(gap) > UNMARKED_PAUSE_SECONDS && each(gap) > PAUSE_RATIO * middle;
        }
    }
    gaps
}

/// The times of the pulls, none before the one before it. A clock that was wrong for some pieces shows in times that run
/// back; the fewest pulls that must be wrong then take the time of the next right one (of the last, at the end). Our own
/// rule. Method: longest non-decreasing subsequence by patience sorting, e.g. M. Fredman, "On computing the length of
/// longest increasing subsequences", Discrete Mathematics 11(1), 1975.
fn steady_times(pulls: &[Pull]) -> Vec<WallTime> {
    let times: Vec<WallTime> = pulls.iter().map(|pull| pull.at).collect();
    if times.is_sorted() {
        return times;
    }
    // For each length, the pull with which a subsequence of that length ends earliest; and what is before each pull.
    let mut ends: Vec<usize> = Vec::new();
    let mut before: Vec<Option<usize>> = Vec::with_capacity(times.len());
    for (at, time) in times.iter().enumerate() {
        let length = ends.partition_point(|end| times[*end] <= *time);
        before.push(length.checked_sub(1).map(|shorter| ends[shorter]));
        match ends.get_mut(length) {
            Some(end) => *end = at,
            None => ends.push(at),
        }
    }
    let mut right = ends.last().copied();
    let mut steady = times.clone();
    let mut next = right.map_or(WallTime::EPOCH, |last| times[last]);
    for at in (0..times.len()).rev() {
        if right == Some(at) {
            next = times[at];
            right = before[at];
        }
        steady[at] = next;
    }
    steady
}

/// The pace of a run so far.
///
/// Several pieces counted at once (k pieces in T seconds) weigh as k: with independent piece times of mean μ
/// and variance σ², T has mean kμ and variance kσ², so weighted least squares gives μ̂ = ΣT/Σk and s² = Σ (T
/// − kμ̂)²/k ÷ (N − 1) over N gaps. With every k = 1 these are the plain mean and standard deviation. Source:
/// any text on weighted regression through the origin, e.g. NIST/SEMATECH e-Handbook of Statistical Methods,
/// 4.1.4.3.
#[derive(Clone, Copy, Debug, PartialEq, Encode)]
pub struct Pace {
    /// Number of gaps.
    pub gaps: u32,
    /// Number of pieces counted in them.
    pub pieces: u32,
    /// Seconds per piece.
    pub mean: f64,
    /// Standard deviation of a piece's time in seconds; 0 with a single gap.
    pub sd: f64,
}

impl Pace {
    /// The pace of these gaps without the pauses; `None` if no gap took time.
    pub fn of(gaps: &[PullGap]) -> Option<Self> {
        let worked = || gaps.iter().filter(|gap| !gap.is_pause && gap.pieces > 0);
        let count = worked().count();
        let pieces: u32 = worked().map(|gap| gap.pieces).sum();
        let seconds: f64 = worked().map(|gap| gap.seconds).sum();
        if count == 0 || seconds <= 0.0 {
            return None;
        }
        let mean = seconds / f64::from(pieces);
        let squares: f64 = worked()
            .map(|gap| {
                let k = f64::from(gap.pieces);
                (gap.seconds - k * mean).powi(2) / k
            })
            .sum();
        let sd = if count > 1 { (squares / (count - 1) as f64).sqrt() } else { 0.0 };
        Some(Self { gaps: count as u32, pieces, mean, sd })
    }

    /// The two paces combined. With SSᵢ = sᵢ²(Nᵢ − 1) around its own mean, the sum of squares around the
    /// common mean is SS₁ + SS₂ + k₁(μ₁ − μ)² + k₂(μ₂ − μ)².
    #[must_use]
    pub fn combine(&self, other: &Self) -> Self {
        let (gaps, pieces) = (self.gaps + other.gaps, self.pieces + other.pieces);
        let seconds = |pace: &Self| pace.mean * f64::from(pace.pieces);
        let mean = (seconds(self) + seconds(other)) / f64::from(pieces);
        let squares = |pace: &Self| {
            pace.sd.powi(2) * f64::from(pace.gaps - 1) + f64::from(pace.pieces) * (pace.mean - mean).powi(2)
        };
        let sd = ((squares(self) + squares(other)) / f64::from(gaps - 1)).sqrt();
        Self { gaps, pieces, mean, sd }
    }

    /// Pieces per hour.
    pub fn per_hour(&self) -> f64 {
        3600.0 / self.mean
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::facts::StopCause;
    use crate::time::wall;

    fn pulls(seconds: &[f64]) -> Vec<Pull> {
        seconds.iter().map(|s| Pull { at: wall((s * 1000.0) as u64), pieces: 1, size: None }).collect()
    }

    /// Source: `tests/data/pace_observed_gaps.csv`; mean and sd as published beside it.
    #[test]
    fn mean_and_spread_agree_with_the_published_gaps() {
        let rows = include_str!("../../../tests/data/pace_observed_gaps.csv");
        let mut at = vec![0.0];
        for row in rows.lines().skip(1) {
            at.push(at[at.len() - 1] + row.parse::<f64>().unwrap());
        }
        let pace = Pace::of(&pull_gaps(&pulls(&at), &[])).unwrap();
        assert_eq!(pace.gaps, 12);
        assert!((pace.mean - 43.641_666_67).abs() < 1e-3, "{pace:?}");
        assert!((pace.sd - 6.583_375_53).abs() < 1e-3, "{pace:?}");
    }

    #[test]
    fn a_stop_does_not_slow_the_pace() {
        let stop = Stop { from: wall(85_000), to: Some(wall(685_000)), cause: Some(StopCause::Screen) };
        let with = Pace::of(&pull_gaps(&pulls(&[0.0, 40.0, 80.0, 720.0, 760.0]), &[stop])).unwrap();
        assert!((with.mean - 40.0).abs() < 1e-9);
    }

    #[test]
    fn a_forgotten_stop_does_not_slow_the_pace_either() {
        let gaps = pull_gaps(&pulls(&[0.0, 40.0, 80.0, 120.0, 1900.0, 1940.0]), &[]);
        assert!(gaps[3].is_pause);
        assert!((Pace::of(&gaps).unwrap().mean - 40.0).abs() < 1e-9);
    }

    #[test]
    fn a_clock_that_was_wrong_for_some_pieces_does_not_change_the_pace() {
        let right = [1_000.0, 1_040.0, 1_080.0, 1_120.0, 1_160.0, 1_200.0, 1_240.0];
        let steady = Pace::of(&pull_gaps(&pulls(&right), &[])).unwrap();
        // Three hours ahead, and set to the beginning of time.
        for wrong in [12_000.0, 0.0] {
            for piece in 1..right.len() {
                let mut times = right;
                times[piece] = wrong + right[piece];
                times[piece] = if wrong == 0.0 { 0.0 } else { times[piece] };
                let gaps = pull_gaps(&pulls(&times), &[]);
                let whole: f64 = gaps.iter().map(|gap| gap.seconds).sum();
                let last = piece == right.len() - 1;
                // Of the first two either may be wrong, and nothing after a last piece says that its time is ahead.
                if !(last && wrong > 0.0 || piece == 1 && wrong == 0.0) {
                    assert!((whole - if last { 200.0 } else { 240.0 }).abs() < 1e-9, "{piece} {gaps:?}");
                    assert!(gaps.iter().all(|gap| !gap.is_pause));
                }
                assert!((Pace::of(&gaps).unwrap().mean - steady.mean).abs() < 7.0, "{piece} {gaps:?}");
            }
        }
        // Ahead for the first half.
        let times: Vec<f64> = right.iter().enumerate().map(|(at, s)| if at < 3 { s + 10_000.0 } else { *s }).collect();
        let gaps = pull_gaps(&pulls(&times), &[]);
        assert_eq!(gaps.iter().map(|gap| gap.seconds).sum::<f64>(), 120.0);
    }

    #[test]
    fn five_pieces_counted_at_once_weigh_as_five() {
        let mut several = pulls(&[0.0, 40.0, 240.0]);
        several[2].pieces = 5;
        let pace = Pace::of(&pull_gaps(&several, &[])).unwrap();
        assert!((pace.mean - 40.0).abs() < 1e-9);
        assert_eq!(pace.pieces, 6);
        assert!(pace.sd < 1e-9);
    }
}
