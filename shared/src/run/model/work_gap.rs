//! The working time between two counts.

use super::{Pull, Stop};
use crate::collections::sort_by_key;
use crate::time::{Millis, WallTime};
use std::ops::Range;

/// The working time from one count to the next.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WorkGap {
    /// Seconds, without marked stops.
    pub seconds: f64,
    /// Pieces counted at its end.
    pub pieces: u32,
    /// Changes of size or pile among them.
    pub changes: u32,
    /// Whether somebody forgot to mark a stop in it, or its time is not known since the clock was wrong: its time is not
    /// looked at.
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
    let (times, right) = steady_times(pulls);
    let mut gaps: Vec<WorkGap> = pulls
        .windows(2)
        .zip(times.windows(2))
        .enumerate()
        .map(|(at, (pair, times))| {
            let (from, to) = (times[0], times[1]);
            let stood: Millis = stops.iter().map(|stop| stop.overlap(from, to)).sum();
            let seconds = (to.since(from) - stood).seconds();
            let changes = u32::from(pair[0].size != pair[1].size);
            WorkGap { seconds, pieces: pair[1].pieces, changes, is_pause: !right.contains(&at) }
        })
        .collect();
    if gaps.iter().any(|gap| gap.each() > UNMARKED_PAUSE_SECONDS) {
        // The bit patterns of non-negative floats sort like the floats.
        let mut sorted: Vec<u64> = gaps.iter().filter(|gap| !gap.is_pause).map(|gap| gap.each().to_bits()).collect();
        sort_by_key(&mut sorted, |bits| *bits);
        let middle = f64::from_bits(sorted[(sorted.len() - 1) / 2]);
        for gap in &mut gaps {
            gap.is_pause |= gap.each() > UNMARKED_PAUSE_SECONDS && gap.each() > PAUSE_RATIO * middle;
        }
    }
    gaps
}

/// The times of the pulls, none before the one before it. A clock that was wrong for some pieces shows in times that run
/// back; the fewest pulls that must be wrong then take the time of the next right one (of the last, at the end). Returns
/// with them the gaps between the first and the last right one, whose sum is known. Our own rule. Method: longest non-decreasing subsequence by patience sorting, e.g. M. Fredman, "On computing the length of
/// longest increasing subsequences", Discrete Mathematics 11(1), 1975.
fn steady_times(pulls: &[Pull]) -> (Vec<WallTime>, Range<usize>) {
    let times: Vec<WallTime> = pulls.iter().map(|pull| pull.at).collect();
    if times.is_sorted() {
        let gaps = 0..times.len();
        return (times, gaps);
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
    let last = ends.last().copied();
    let (mut right, mut first) = (last, 0);
    let mut steady = times.clone();
    let mut next = right.map_or(WallTime::EPOCH, |last| times[last]);
    for at in (0..times.len()).rev() {
        if right == Some(at) {
            next = times[at];
            right = before[at];
            first = at;
        }
        steady[at] = next;
    }
    (steady, first..last.unwrap_or_default())
}
