//! The course of a run: what the time of a piece depends on.

use super::matrix::Vector;

/// The time of a piece once the run has settled, before any drift.
pub(super) const LEVEL: usize = 0;
/// The first of the effects: extra time of each of the first five pieces; then of each of the five after those;
/// then extra time a piece per hundred pieces pulled.
pub(super) const START: usize = 1;
/// Extra time at a change of size or pile.
pub(super) const CHANGE: usize = 4;

/// The last of the first pieces, and of those after them.
const START_ENDS: f64 = 5.0;
const SETTLING_ENDS: f64 = 10.0;
/// Pieces over which the drift is counted as one.
const DRIFT_PIECES: f64 = 100.0;
/// A drift is not carried further than the longest run it was seen in, and never less far than this. Our own.
pub(super) const LEAST_REACH: f64 = 200.0;

/// The coefficients' sums over the pieces after `done` up to `done + pieces` (which may be a fraction), with
/// `changes` of size or pile among them; a drift ends at piece `reach`.
pub(super) fn terms(done: f64, pieces: f64, changes: f64, reach: f64) -> Vector {
    let until = |end: f64, from: f64| (end.min(done + pieces) - from.max(done)).max(0.0);
    // The drift of piece j is j up to `reach`, and `reach` from there on: the middle of the pieces before it.
    let before = until(reach, 0.0);
    let drift = before * (done + f64::midpoint(before, 1.0)) + (pieces - before) * reach;
    [pieces, until(START_ENDS, 0.0), until(SETTLING_ENDS, START_ENDS), drift / DRIFT_PIECES, changes]
}

#[cfg(test)]
mod tests {
    use super::super::matrix::TERMS;
    use super::*;

    #[test]
    fn the_sums_over_a_whole_run_are_those_of_its_pieces() {
        for (done, pieces, reach) in [(0, 3, 200.0), (0, 36, 200.0), (4, 4, 200.0), (7, 300, 200.0), (250, 10, 200.0)] {
            let mut sum = [0.0; TERMS];
            for piece in done + 1..=done + pieces {
                let one = [
                    1.0,
                    f64::from(u8::from(piece <= 5)),
                    f64::from(u8::from((6..=10).contains(&piece))),
                    f64::from(piece).min(reach) / 100.0,
                    0.0,
                ];
                sum = std::array::from_fn(|term| sum[term] + one[term]);
            }
            let ours = terms(f64::from(done), f64::from(pieces), 0.0, reach);
            assert!(ours.iter().zip(&sum).all(|(a, b)| (a - b).abs() < 1e-9), "{ours:?} {sum:?}");
        }
    }
}
