//! The hybrid logical clock that orders facts.
//!
//! Wall time as far as it can be trusted, and a counter while it stands still or runs backwards. Method: S.
//! Kulkarni et al., "Logical Physical Clocks", OPODIS 2014.

use crate::codec::Encode;
use crate::time::{Millis, WallTime};
use serde::{Deserialize, Serialize};

/// When a fact was recorded: wall time, then a counter.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Default, Serialize, Deserialize, Encode)]
#[serde(from = "(WallTime, u32)", into = "(WallTime, u32)")]
pub struct Stamp {
    /// Wall time by the device's clock.
    pub wall: WallTime,
    /// Orders facts of the same millisecond, and facts recorded while the clock lags.
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
    /// The smallest stamp after this one.
    pub fn next(self) -> Self {
        match self.counter.checked_add(1) {
            Some(counter) => Self { wall: self.wall, counter },
            None => Self { wall: self.wall + Millis::from_ms(1), counter: 0 },
        }
    }
}

/// Another device's stamp was further ahead of this device's clock than can be trusted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct FarAhead {
    /// How far ahead it was.
    pub by: Millis,
}

/// Assigns each fact of this device a stamp later than every fact seen.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default, Serialize, Deserialize, Encode)]
pub struct HybridClock {
    last: Stamp,
}

impl HybridClock {
    /// Largest trusted lead of another clock. Phones that set their clock automatically agree within seconds,
    /// others within minutes. A clock more than an hour ahead is wrong, and following it would spoil the times
    /// of every later fact here.
    pub const TRUSTED_AHEAD: Millis = Millis::from_hours(1);

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

    /// Takes another device's stamp into account, so that the next one assigned here is later. A stamp too far
    /// ahead of `now` advances the clock only as far as is trusted.
    ///
    /// # Errors
    /// [`FarAhead`], which should be reported to the user; the clock remains usable.
    pub fn observe(&mut self, seen: Stamp, now: WallTime) -> Result<(), FarAhead> {
        let limit = Stamp { wall: now + Self::TRUSTED_AHEAD, counter: 0 };
        self.last = self.last.max(seen.min(limit));
        if seen > limit { Err(FarAhead { by: seen.wall.since(now) }) } else { Ok(()) }
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
        assert_eq!(clock.observe(seen, wall(1_000)), Ok(()));
        assert!(clock.stamp(wall(1_001)) > seen);
    }

    #[test]
    fn a_stamp_from_a_wrong_year_is_clamped_and_reported() {
        let mut clock = HybridClock::default();
        let year = Millis::from_days(365);
        assert_eq!(
            clock.observe(Stamp { wall: WallTime::EPOCH + year, counter: 0 }, WallTime::EPOCH),
            Err(FarAhead { by: year })
        );
        assert_eq!(clock.stamp(wall(10)).wall, WallTime::EPOCH + HybridClock::TRUSTED_AHEAD);
    }

    #[test]
    fn a_full_counter_moves_to_the_next_millisecond() {
        let full = Stamp { wall: wall(7), counter: u32::MAX };
        assert_eq!(full.next(), Stamp { wall: wall(8), counter: 0 });
    }
}
