//! The hybrid logical clock that orders facts.
//!
//! Wall time as far as it can be trusted, and a counter while it stands still or runs backwards. Method: S.
//! Kulkarni et al., "Logical Physical Clocks", OPODIS 2014.
//!
//! # Decisions
//!
//! - **Clocks** (2026-11-29). The hybrid clock follows every stamp, however far ahead: later facts here come after
//!   it, override its fields and are folded without folding everything again. Clipping stamps at import would order
//!   the same facts differently on two devices. The wall time of each entry is beside its stamp, so a clock that was
//!   wrong spoils only what was recorded while it was. The working day turns at four in the morning. A due time uses
//!   its own day's offset from UTC (`time/zone.rs`).

use crate::codec::Encode;
use crate::time::{Millis, WallTime};
use serde::{Deserialize, Serialize};

/// Latest moment accepted: the year 2500.
pub(super) const LATEST_WALL: WallTime = WallTime::from_unix_ms(16_725_225_600_000);

/// The order in which facts were recorded: wall time, then a counter.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Default, Serialize, Deserialize, Encode)]
#[serde(from = "(WallTime, u32)", into = "(WallTime, u32)")]
pub struct Stamp {
    /// The latest wall time that the device knew of: its own clock's, or that of an entry it had seen.
    pub wall: WallTime,
    /// Orders facts of the same millisecond, and facts recorded while the clock is behind `wall`.
    pub counter: u32,
}

impl From<(WallTime, u32)> for Stamp {
    fn from((wall, counter): (WallTime, u32)) -> Self {
        Self { wall, counter }
    }
}

impl From<Stamp> for (WallTime, u32) {
    fn from(stamp: Stamp) -> Self {
        (stamp.wall, stamp.counter)
    }
}

impl Stamp {
    /// The smallest stamp after this one; the last stamp that is accepted from a file is followed by itself, and the
    /// sequence numbers then give the order.
    pub fn next(self) -> Self {
        match self.counter.checked_add(1) {
            Some(counter) => Self { wall: self.wall, counter },
            None if self.wall >= LATEST_WALL => self,
            None => Self { wall: self.wall + Millis::from_ms(1), counter: 0 },
        }
    }
}

/// Assigns each fact of this device a stamp later than every fact seen.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default, Serialize, Deserialize, Encode)]
pub struct HybridClock {
    last: Stamp,
}

impl HybridClock {
    /// A clock that has seen stamps up to `last`.
    pub fn after(last: Stamp) -> Self {
        Self { last }
    }

    /// The latest stamp assigned or seen.
    pub fn last(self) -> Stamp {
        self.last
    }

    /// The stamp for a fact that happened at `now`.
    pub fn stamp(&mut self, now: WallTime) -> Stamp {
        let fresh = Stamp { wall: now, counter: 0 };
        self.last = if fresh > self.last { fresh } else { self.last.next() };
        self.last
    }

    /// Takes another device's stamp into account, so that the next one assigned here is later, however far ahead that
    /// device's clock is: what is recorded here afterwards then comes after it in the fold, and overrides its fields. The
    /// wall time of the facts is not affected; see [`Entry::at`](super::Entry::at).
    pub fn observe(&mut self, seen: Stamp) {
        self.last = self.last.max(seen);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::time::wall;

    #[test]
    fn stamps_rise_while_the_wall_clock_stalls_or_runs_back() {
        let mut clock = HybridClock::default();
        let stamps: Vec<Stamp> = [100, 100, 90, 101].map(|now| clock.stamp(wall(now))).into();
        assert!(stamps.windows(2).all(|pair| pair[0] < pair[1]), "{stamps:?}");
        assert_eq!(stamps[3], Stamp { wall: wall(101), counter: 0 });
    }

    #[test]
    fn facts_recorded_after_a_merge_sort_after_the_merged_ones() {
        let mut clock = HybridClock::default();
        let seen = Stamp { wall: wall(5_000), counter: 7 };
        clock.observe(seen);
        assert!(clock.stamp(wall(1_001)) > seen);
    }

    #[test]
    fn a_stamp_from_a_wrong_year_is_followed() {
        let mut clock = HybridClock::default();
        let seen = Stamp { wall: WallTime::EPOCH + Millis::from_days(365), counter: 0 };
        clock.observe(seen);
        assert_eq!(clock.stamp(wall(10)), seen.next());
    }

    #[test]
    fn no_stamp_that_a_file_may_hold_leads_to_one_that_it_may_not() {
        let mut clock = HybridClock::after(Stamp { wall: LATEST_WALL, counter: u32::MAX });
        assert_eq!(clock.stamp(wall(10)).wall, LATEST_WALL);
    }

    #[test]
    fn a_full_counter_moves_to_the_next_millisecond() {
        let full = Stamp { wall: wall(7), counter: u32::MAX };
        assert_eq!(full.next(), Stamp { wall: wall(8), counter: 0 });
    }
}
