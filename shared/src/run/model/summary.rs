//! What is kept of an ended run for the forecasts of later ones.

use super::WorkGap;
use crate::bounds::total;
use crate::codec::{Encode, Reader};

/// How fast a run went.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pace {
    /// Number of gaps, without pauses.
    pub gaps: u32,
    /// Number of pieces counted in them.
    pub pieces: u32,
    /// Seconds per piece.
    pub mean: f64,
}

impl Pace {
    /// Pieces per hour.
    pub fn per_hour(&self) -> f64 {
        3600.0 / self.mean
    }
}

/// A stretch of a run: pieces and their time, without gaps in which the size or the pile changed.
#[derive(Clone, Copy, Debug, PartialEq, Default, Encode)]
pub struct Stretch {
    /// Pieces.
    pub pieces: u32,
    /// Their seconds.
    pub seconds: f32,
    /// Their mean place in the run; the first piece timed is at 1.
    pub place: f32,
}

/// The last piece of each stretch but the last: short at the start, where a run changes most. Our own.
const STRETCH_ENDS: [u32; 6] = [5, 10, 20, 40, 80, 160];

/// How far apart the gaps of a pair are.
const LAGS: [usize; 2] = [1, 4];

/// A run in some thirty numbers, computed once when it leaves the press. They do not depend on the model that
/// reads them. Sums are kept with seven digits: a shop has thousands of runs.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub struct PaceSummary {
    /// Its course: pieces 1–5, 6–10, 11–20, 21–40, 41–80, 81–160, and from 161.
    pub stretches: [Stretch; STRETCH_ENDS.len() + 1],
    /// Gaps that count.
    pub gaps: u32,
    /// Their pieces.
    pub timed: u32,
    /// Their seconds.
    pub seconds: f32,
    /// Pieces timed, those in pauses included: its length.
    pub pieces: u32,
    /// Pairs of neighbouring gaps, and of gaps four apart.
    pub pairs: [u32; 2],
    /// Sums over these of the squared difference in seconds per piece, each divided by the mean of 1/pieces of
    /// the two gaps. A slow trend hardly adds to them. Source of the use of successive differences: J. von
    /// Neumann et al., Annals of Mathematical Statistics 12, 1941.
    pub squared_differences: [f32; 2],
    /// Changes of size or pile.
    pub changes: u32,
    /// Seconds that the gaps with these took beyond the gaps beside them.
    pub change_seconds: f32,
    /// Stops for trouble.
    pub stops: u32,
    /// Their seconds.
    pub stop_seconds: f32,
    /// The sum of the squares of their seconds.
    pub stop_squares: f32,
    /// Good pieces.
    pub good: u32,
    /// Misprints.
    pub misprints: u32,
}

impl PaceSummary {
    /// The summary of an ended run: its gaps, the seconds of each stop for trouble, good pieces and misprints.
    pub fn of(gaps: &[WorkGap], stops: &[f64], good: u32, misprints: u32) -> Self {
        let mut summary = Self::default();
        summary.add_gaps(gaps);
        summary.set_trouble(stops, good, misprints);
        summary
    }

    /// Adds the gaps that came after those of this summary.
    pub(crate) fn add_gaps(&mut self, gaps: &[WorkGap]) {
        for (index, gap) in gaps.iter().enumerate() {
            let before = self.pieces;
            self.pieces = self.pieces.saturating_add(gap.pieces);
            if !gap.counts() {
                continue;
            }
            self.gaps += 1;
            self.timed = self.timed.saturating_add(gap.pieces);
            add(&mut self.seconds, gap.seconds);
            if gap.changes > 0 {
                self.add_change(gap, index.checked_sub(1).map(|before| &gaps[before]), gaps.get(index + 1));
                continue;
            }
            let place = f64::from(before) + f64::from(gap.pieces + 1) / 2.0;
            let stretch = STRETCH_ENDS.iter().filter(|end| place > f64::from(**end)).count();
            self.stretches[stretch].add(gap, place);
            for (at, lag) in LAGS.into_iter().enumerate() {
                let plain = |other: &&WorkGap| other.counts() && other.changes == 0;
                if let Some(other) = index.checked_sub(lag).map(|other| &gaps[other]).filter(plain) {
                    let weight = f64::midpoint(1.0 / f64::from(gap.pieces), 1.0 / f64::from(other.pieces));
                    self.pairs[at] += 1;
                    add(&mut self.squared_differences[at], (gap.each() - other.each()).powi(2) / weight);
                }
            }
        }
    }

    /// Sets the whole run's stops for trouble (their seconds), good pieces and misprints.
    pub(crate) fn set_trouble(&mut self, stops: &[f64], good: u32, misprints: u32) {
        self.stops = stops.len() as u32;
        self.stop_seconds = stops.iter().sum::<f64>() as f32;
        self.stop_squares = stops.iter().map(|seconds| seconds * seconds).sum::<f64>() as f32;
        (self.good, self.misprints) = (good, misprints);
    }

    fn add_change(&mut self, gap: &WorkGap, before: Option<&WorkGap>, after: Option<&WorkGap>) {
        let plain = |other: &&WorkGap| other.counts() && other.changes == 0;
        let beside: Vec<f64> = before.into_iter().chain(after).filter(plain).map(WorkGap::each).collect();
        if beside.is_empty() {
            return;
        }
        let each = beside.iter().sum::<f64>() / beside.len() as f64;
        self.changes += gap.changes;
        add(&mut self.change_seconds, gap.seconds - each * f64::from(gap.pieces));
    }

    /// Seconds per piece over the whole run, without changes of size or pile; `None` if no gap took time.
    pub(crate) fn mean(&self) -> Option<f64> {
        let pieces = total(self.stretches.iter().map(|stretch| stretch.pieces));
        let seconds: f64 = self.stretches.iter().map(|stretch| f64::from(stretch.seconds)).sum();
        (pieces > 0 && seconds > 0.0).then(|| seconds / f64::from(pieces))
    }

    /// The pace over all gaps that count; `None` if none took time.
    pub fn pace(&self) -> Option<Pace> {
        let seconds = f64::from(self.seconds);
        (self.timed > 0 && seconds > 0.0).then(|| Pace {
            gaps: self.gaps,
            pieces: self.timed,
            mean: seconds / f64::from(self.timed),
        })
    }

    /// The run as gaps, one for each stretch, and the pieces of which no time is known in a pause at the end.
    pub(crate) fn as_gaps(&self) -> Vec<WorkGap> {
        let gap = |stretch: &Stretch| WorkGap {
            seconds: f64::from(stretch.seconds),
            pieces: stretch.pieces,
            changes: 0,
            is_pause: false,
        };
        let mut gaps: Vec<WorkGap> = self.stretches.iter().filter(|stretch| stretch.pieces > 0).map(gap).collect();
        let known = total(gaps.iter().map(|gap| gap.pieces));
        gaps.push(WorkGap { seconds: 0.0, pieces: self.pieces.saturating_sub(known), changes: 0, is_pause: true });
        gaps
    }
}

impl Stretch {
    fn add(&mut self, gap: &WorkGap, place: f64) {
        self.pieces = self.pieces.saturating_add(gap.pieces);
        let by = (place - f64::from(self.place)) * f64::from(gap.pieces) / f64::from(self.pieces);
        add(&mut self.place, by);
        add(&mut self.seconds, gap.seconds);
    }
}

fn add(sum: &mut f32, more: f64) {
    *sum = (f64::from(*sum) + more) as f32;
}

/// Stretches after the last one reached are left out.
impl Encode for PaceSummary {
    fn encode(&self, out: &mut Vec<u8>) {
        let reached = self.stretches.iter().rposition(|stretch| stretch.pieces > 0).map_or(0, |last| last + 1);
        self.stretches[..reached].to_vec().encode(out);
        [self.gaps, self.timed, self.pieces, self.changes, self.stops, self.good, self.misprints].encode(out);
        self.pairs.encode(out);
        [self.seconds, self.change_seconds, self.stop_seconds, self.stop_squares].encode(out);
        self.squared_differences.encode(out);
    }

    fn decode(from: &mut Reader<'_>) -> Self {
        let mut stretches = [Stretch::default(); STRETCH_ENDS.len() + 1];
        let reached = Vec::<Stretch>::decode(from);
        if reached.len() > stretches.len() {
            from.fail();
        }
        for (stretch, reached) in stretches.iter_mut().zip(reached) {
            *stretch = reached;
        }
        let [gaps, timed, pieces, changes, stops, good, misprints] = Encode::decode(from);
        let pairs = Encode::decode(from);
        let [seconds, change_seconds, stop_seconds, stop_squares] = Encode::decode(from);
        let squared_differences = Encode::decode(from);
        Self {
            stretches,
            gaps,
            timed,
            seconds,
            pieces,
            pairs,
            squared_differences,
            changes,
            change_seconds,
            stops,
            stop_seconds,
            stop_squares,
            good,
            misprints,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::facts::{Size, StopCause};
    use crate::run::{Pull, Stop, work_gaps};
    use crate::time::wall;

    fn gap(seconds: f64, pieces: u32, changes: u32) -> WorkGap {
        WorkGap { seconds, pieces, changes, is_pause: false }
    }

    #[test]
    fn a_run_is_summed_up_by_stretches_differences_and_changes() {
        let mut gaps: Vec<WorkGap> = (0..24).map(|at| gap(if at % 2 == 0 { 38.0 } else { 42.0 }, 1, 0)).collect();
        gaps[14] = gap(50.0, 1, 1);
        gaps[20] = WorkGap { is_pause: true, ..gap(900.0, 1, 0) };
        let summary = PaceSummary::of(&gaps, &[60.0, 120.0], 23, 2);
        assert_eq!(summary.stretches.map(|stretch| stretch.pieces), [5, 5, 9, 3, 0, 0, 0]);
        assert_eq!((summary.gaps, summary.pieces, summary.changes), (23, 24, 1));
        assert!((summary.stretches[0].place - 3.0).abs() < 1e-6 && (summary.stretches[1].place - 8.0).abs() < 1e-6);
        // Between 42 and 42 s.
        assert!((summary.change_seconds - 8.0).abs() < 1e-6, "{summary:?}");
        // Neighbours are 4 s apart, every other gap is alike; two gaps left out cost two pairs each.
        assert_eq!(summary.pairs, [19, 17]);
        assert!((summary.squared_differences[0] - 19.0 * 16.0).abs() < 1e-3);
        assert!(summary.squared_differences[1].abs() < 1e-6);
        assert_eq!((summary.stop_seconds, summary.stop_squares), (180.0, 18_000.0));
    }

    #[test]
    fn dozens_differ_by_less_than_single_pieces_do_and_are_weighed_for_it() {
        // Twelve pieces in 480 s and in 504 s: 2 s a piece apart, of pieces that differ by √12 times as much.
        let summary = PaceSummary::of(&[gap(480.0, 12, 0), gap(504.0, 12, 0)], &[], 24, 0);
        assert!((summary.squared_differences[0] - 4.0 * 12.0).abs() < 1e-4, "{summary:?}");
        assert!((summary.mean().unwrap() - 41.0).abs() < 1e-12);
    }

    #[test]
    fn gaps_added_later_are_summed_up_as_if_they_had_come_at_once() {
        let gaps: Vec<WorkGap> = (0..30).map(|at| gap(30.0 + f64::from(at), 1, 0)).collect();
        let whole = PaceSummary::of(&gaps, &[60.0], 28, 2);
        let mut parts = PaceSummary::of(&gaps[..12], &[60.0], 12, 0);
        parts.add_gaps(&gaps[12..]);
        parts.set_trouble(&[60.0], 28, 2);
        // Pairs across the seam are not known.
        assert_eq!((whole.pairs, parts.pairs), ([29, 26], [28, 22]));
        parts.pairs = whole.pairs;
        parts.squared_differences = whole.squared_differences;
        assert_eq!(parts, whole);
        let back = parts.as_gaps();
        assert_eq!(back.iter().map(|gap| gap.pieces).collect::<Vec<_>>(), [5, 5, 10, 10, 0]);
        assert!((back.iter().map(|gap| gap.seconds).sum::<f64>() - 30.0 * 44.5).abs() < 1e-9);
    }

    #[test]
    fn a_summary_reads_back_from_its_bytes() {
        let gaps: Vec<WorkGap> = (0..50).map(|at| gap(30.0 + f64::from(at % 7), 1, u32::from(at == 20))).collect();
        for summary in [PaceSummary::default(), PaceSummary::of(&gaps, &[61.5], 48, 2)] {
            let bytes = crate::codec::to_bytes(&summary);
            assert_eq!(crate::codec::from_bytes(&bytes), Some(summary));
            assert!(bytes.len() < 100, "{}", bytes.len());
        }
    }

    fn pulls(seconds: &[f64]) -> Vec<Pull> {
        seconds.iter().map(|s| Pull { at: wall((s * 1000.0) as u64), pieces: 1, size: None }).collect()
    }

    fn pace(pulls: &[Pull], stops: &[Stop]) -> Pace {
        PaceSummary::of(&work_gaps(pulls, stops), &[], 0, 0).pace().unwrap()
    }

    #[test]
    fn a_stop_does_not_slow_the_pace() {
        let stop = Stop { from: wall(85_000), to: Some(wall(685_000)), cause: Some(StopCause::Screen) };
        let with = pace(&pulls(&[0.0, 40.0, 80.0, 720.0, 760.0]), &[stop]);
        assert!((with.mean - 40.0).abs() < 1e-9);
    }

    #[test]
    fn a_forgotten_stop_does_not_slow_the_pace_either() {
        let pulls = pulls(&[0.0, 40.0, 80.0, 120.0, 1900.0, 1940.0]);
        assert!(work_gaps(&pulls, &[])[3].is_pause);
        assert!((pace(&pulls, &[]).mean - 40.0).abs() < 1e-9);
    }

    #[test]
    fn a_clock_that_was_wrong_for_some_pieces_does_not_change_the_pace() {
        let right = [1_000.0, 1_040.0, 1_080.0, 1_120.0, 1_160.0, 1_200.0, 1_240.0];
        let steady = pace(&pulls(&right), &[]);
        // Three hours ahead, and set to the beginning of time.
        for wrong in [12_000.0, 0.0] {
            for piece in 1..right.len() {
                let mut times = right;
                times[piece] = wrong + right[piece];
                times[piece] = if wrong == 0.0 { 0.0 } else { times[piece] };
                let gaps = work_gaps(&pulls(&times), &[]);
                let whole: f64 = gaps.iter().map(|gap| gap.seconds).sum();
                let last = piece == right.len() - 1;
                // Of the first two either may be wrong, and nothing after a last piece says that its time is ahead.
                if !(last && wrong > 0.0 || piece == 1 && wrong == 0.0) {
                    assert!((whole - if last { 200.0 } else { 240.0 }).abs() < 1e-9, "{piece} {gaps:?}");
                    assert_eq!(gaps.iter().filter(|gap| gap.is_pause).count(), usize::from(last), "{piece} {gaps:?}");
                }
                let pace = PaceSummary::of(&gaps, &[], 0, 0).pace().unwrap();
                assert!((pace.mean - steady.mean).abs() < 1e-9, "{piece} {gaps:?}");
            }
        }
        // Ahead for the first half.
        let times: Vec<f64> = right.iter().enumerate().map(|(at, s)| if at < 3 { s + 10_000.0 } else { *s }).collect();
        let ahead = pulls(&times);
        let whole: f64 = work_gaps(&ahead, &[]).iter().map(|gap| gap.seconds).sum();
        assert!((whole - 120.0).abs() < 1e-9);
        assert!((pace(&ahead, &[]).mean - steady.mean).abs() < 1e-9);
    }

    #[test]
    fn five_pieces_counted_at_once_weigh_as_five() {
        let mut several = pulls(&[0.0, 40.0, 240.0]);
        several[2].pieces = 5;
        let pace = pace(&several, &[]);
        assert!((pace.mean - 40.0).abs() < 1e-9);
        assert_eq!((pace.gaps, pace.pieces), (2, 6));
    }

    #[test]
    fn the_next_size_is_a_change_and_the_same_size_is_none() {
        let mut sized = pulls(&[0.0, 40.0, 80.0, 120.0]);
        sized[2].size = Some(Size::M);
        sized[3].size = Some(Size::M);
        let changes: Vec<u32> = work_gaps(&sized, &[]).iter().map(|gap| gap.changes).collect();
        assert_eq!(changes, [0, 1, 0]);
    }
}
