//! What is kept of an ended run for the forecasts of later ones.

/// The working time from one count to the next.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WorkGap {
    /// Seconds, without marked stops.
    pub seconds: f64,
    /// Pieces counted at its end.
    pub pieces: u32,
    /// Changes of size or pile among them.
    pub changes: u32,
    /// Whether somebody forgot to mark a stop in it: its time is not looked at.
    pub is_pause: bool,
}

impl WorkGap {
    /// Whether its time can be used.
    pub(super) fn counts(&self) -> bool {
        !self.is_pause && self.pieces > 0 && self.seconds.is_finite() && self.seconds >= 0.0
    }

    /// Seconds per piece.
    pub(super) fn each(&self) -> f64 {
        self.seconds / f64::from(self.pieces.max(1))
    }
}

/// A stretch of a run: pieces and their time, without gaps in which the size or the pile changed.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub struct Stretch {
    /// Pieces.
    pub pieces: u32,
    /// Their seconds.
    pub seconds: f64,
    /// Their mean place in the run; the first piece timed is at 1.
    pub place: f64,
}

/// The last piece of each stretch but the last: short at the start, where a run changes most. Our own.
pub(super) const STRETCH_ENDS: [u32; 6] = [5, 10, 20, 40, 80, 160];

/// How far apart the gaps of a pair are.
pub(super) const LAGS: [usize; 2] = [1, 4];

/// A run in some thirty numbers, computed once when it leaves the press. They do not depend on the model that
/// reads them.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub struct PaceSummary {
    /// Its course: pieces 1–5, 6–10, 11–20, 21–40, 41–80, 81–160, and from 161.
    pub stretches: [Stretch; STRETCH_ENDS.len() + 1],
    /// Gaps that count.
    pub gaps: u32,
    /// Pieces timed, those in pauses included: its length.
    pub pieces: u32,
    /// Pairs of neighbouring gaps, and of gaps four apart.
    pub pairs: [u32; 2],
    /// Sums over these of the squared difference in seconds per piece, each divided by the mean of 1/pieces of
    /// the two gaps. A slow trend hardly adds to them. Source of the use of successive differences: J. von
    /// Neumann et al., Annals of Mathematical Statistics 12, 1941.
    pub squared_differences: [f64; 2],
    /// Changes of size or pile.
    pub changes: u32,
    /// Seconds that the gaps with these took beyond the gaps beside them.
    pub change_seconds: f64,
    /// Stops for trouble.
    pub stops: u32,
    /// Their seconds.
    pub stop_seconds: f64,
    /// The sum of the squares of their seconds.
    pub stop_squares: f64,
    /// Good pieces.
    pub good: u32,
    /// Misprints.
    pub misprints: u32,
}

impl PaceSummary {
    /// The summary of an ended run: its gaps, the seconds of each stop for trouble, good pieces and misprints.
    pub fn of(gaps: &[WorkGap], stops: &[f64], good: u32, misprints: u32) -> Self {
        let mut summary = Self {
            stops: stops.len() as u32,
            stop_seconds: stops.iter().sum(),
            stop_squares: stops.iter().map(|seconds| seconds * seconds).sum(),
            good,
            misprints,
            ..Self::default()
        };
        for (index, gap) in gaps.iter().enumerate() {
            let before = summary.pieces;
            summary.pieces += gap.pieces;
            if !gap.counts() {
                continue;
            }
            summary.gaps += 1;
            if gap.changes > 0 {
                summary.add_change(gap, gaps[..index].last(), gaps.get(index + 1));
                continue;
            }
            let place = f64::from(before) + f64::from(gap.pieces + 1) / 2.0;
            let stretch = STRETCH_ENDS.iter().filter(|end| place > f64::from(**end)).count();
            summary.stretches[stretch].add(gap, place);
            for (at, lag) in LAGS.into_iter().enumerate() {
                let plain = |other: &&WorkGap| other.counts() && other.changes == 0;
                if let Some(other) = index.checked_sub(lag).map(|other| &gaps[other]).filter(plain) {
                    let weight = f64::midpoint(1.0 / f64::from(gap.pieces), 1.0 / f64::from(other.pieces));
                    summary.pairs[at] += 1;
                    summary.squared_differences[at] += (gap.each() - other.each()).powi(2) / weight;
                }
            }
        }
        summary
    }

    fn add_change(&mut self, gap: &WorkGap, before: Option<&WorkGap>, after: Option<&WorkGap>) {
        let plain = |other: &&WorkGap| other.counts() && other.changes == 0;
        let beside: Vec<f64> = before.into_iter().chain(after).filter(plain).map(WorkGap::each).collect();
        if beside.is_empty() {
            return;
        }
        let each = beside.iter().sum::<f64>() / beside.len() as f64;
        self.changes += gap.changes;
        self.change_seconds += gap.seconds - each * f64::from(gap.pieces);
    }

    /// Seconds per piece over the whole run; `None` if no gap took time.
    pub(super) fn mean(&self) -> Option<f64> {
        let pieces: u32 = self.stretches.iter().map(|stretch| stretch.pieces).sum();
        let seconds: f64 = self.stretches.iter().map(|stretch| stretch.seconds).sum();
        (pieces > 0 && seconds > 0.0).then(|| seconds / f64::from(pieces))
    }
}

impl Stretch {
    fn add(&mut self, gap: &WorkGap, place: f64) {
        let pieces = f64::from(self.pieces + gap.pieces);
        self.place += (place - self.place) * f64::from(gap.pieces) / pieces;
        self.pieces += gap.pieces;
        self.seconds += gap.seconds;
    }
}

#[cfg(test)]
mod tests {
    use super::*;

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
        assert!((summary.stretches[0].place - 3.0).abs() < 1e-12 && (summary.stretches[1].place - 8.0).abs() < 1e-12);
        // Between 42 and 42 s.
        assert!((summary.change_seconds - 8.0).abs() < 1e-12, "{summary:?}");
        // Neighbours are 4 s apart, every other gap is alike; two gaps left out cost two pairs each.
        assert_eq!(summary.pairs, [19, 17]);
        assert!((summary.squared_differences[0] - 19.0 * 16.0).abs() < 1e-9);
        assert!(summary.squared_differences[1].abs() < 1e-12);
        assert_eq!((summary.stop_seconds, summary.stop_squares), (180.0, 18_000.0));
    }

    #[test]
    fn dozens_differ_by_less_than_single_pieces_do_and_are_weighed_for_it() {
        // Twelve pieces in 480 s and in 504 s: 2 s a piece apart, of pieces that differ by √12 times as much.
        let summary = PaceSummary::of(&[gap(480.0, 12, 0), gap(504.0, 12, 0)], &[], 24, 0);
        assert!((summary.squared_differences[0] - 4.0 * 12.0).abs() < 1e-9, "{summary:?}");
        assert!((summary.mean().unwrap() - 41.0).abs() < 1e-12);
    }
}
