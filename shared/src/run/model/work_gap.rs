//! The working time between two counts.

use super::{Pull, Stop};
use crate::collections::sort_by_key;
use crate::time::Millis;

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
    pub(crate) fn counts(&self) -> bool {
        !self.is_pause && self.pieces > 0 && self.seconds.is_finite() && self.seconds >= 0.0
    }

    /// Seconds per piece.
    pub(crate) fn each(&self) -> f64 {
        self.seconds / f64::from(self.pieces.max(1))
    }
}

/// A gap between pulls longer than this, in seconds, without a marked stop is a pause that somebody forgot to
/// mark, if it is also far longer than the run's other gaps. Our own rule.
pub const UNMARKED_PAUSE_SECONDS: f64 = 300.0;

/// A gap this many times the run's median gap may be an unmarked pause.
const PAUSE_RATIO: f64 = 6.0;

/// The gaps between pulls, without the stops and with unmarked pauses flagged. A pull of another size than the
/// one before is a change.
pub fn work_gaps(pulls: &[Pull], stops: &[Stop]) -> Vec<WorkGap> {
    let mut gaps: Vec<WorkGap> = pulls
        .windows(2)
        .map(|pair| {
            let (from, to) = (pair[0].at, pair[1].at);
            let stood: Millis = stops.iter().map(|stop| stop.overlap(from, to)).sum();
            let seconds = (to.since(from) - stood).seconds();
            let changes = u32::from(pair[0].size != pair[1].size);
            WorkGap { seconds, pieces: pair[1].pieces, changes, is_pause: false }
        })
        .collect();
    if gaps.iter().any(|gap| gap.each() > UNMARKED_PAUSE_SECONDS) {
        // The bit patterns of non-negative floats sort like the floats.
        let mut sorted: Vec<u64> = gaps.iter().map(|gap| gap.each().to_bits()).collect();
        sort_by_key(&mut sorted, |bits| *bits);
        let middle = f64::from_bits(sorted[(sorted.len() - 1) / 2]);
        for gap in &mut gaps {
            gap.is_pause = gap.each() > UNMARKED_PAUSE_SECONDS && gap.each() > PAUSE_RATIO * middle;
        }
    }
    gaps
}
