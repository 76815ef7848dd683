//! The shop's time zone: how far local time is ahead of UTC at each moment.
//!
//! # Decisions
//!
//! - **After a move to another time zone** (2026-11-29) earlier work is shown at the new zone's times. An entry holds
//!   its moment and no offset: to keep the old times, each entry or a fact of each device would have to hold one, and
//!   all that shows or adds up days would ask for it, for an event that a shop has once. What counts stays: a move of
//!   up to three hours leaves work between 7:00 am and 1:00 am on its working day (tested), due dates and closings
//!   are local days and times of the shop, and the change of the clocks is no move. The settings say so beside the
//!   closing times.

use super::{Millis, WallTime};

/// The offset from UTC from a moment on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct OffsetChange {
    /// The first moment with this offset.
    pub at: WallTime,
    /// Minutes that local time is ahead of UTC; negative in the west.
    pub minutes: i32,
}

/// The offsets of a time zone by moment: daylight saving time begins and ends.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Zone {
    /// Minutes ahead of UTC before the first change.
    minutes: i32,
    /// By rising time.
    changes: &'static [OffsetChange],
}

/// The time between two looks for a change. No zone changes twice within it: Morocco's month of Ramadan is the shortest.
const STEP: Millis = Millis::from_days(14);

impl Zone {
    /// A zone whose offset never changes.
    pub const fn fixed(minutes: i32) -> Self {
        Self { minutes, changes: &[] }
    }

    /// A zone with this offset before the first of these changes, which are by rising time.
    pub const fn new(minutes: i32, changes: &'static [OffsetChange]) -> Self {
        Self { minutes, changes }
    }

    /// Minutes that local time is ahead of UTC at a moment.
    ///
    /// ```
    /// use lastpull_core::time::{OffsetChange, WallTime, Zone};
    ///
    /// // Clocks go forward on 2026-03-08 at 07:00Z.
    /// const SPRING: WallTime = WallTime::from_unix_ms(1_772_953_200_000);
    /// static CHANGES: [OffsetChange; 1] = [OffsetChange { at: SPRING, minutes: -240 }];
    /// let zone = Zone::new(-300, &CHANGES);
    /// assert_eq!(zone.offset_at(WallTime::from_unix_ms(SPRING.unix_ms() - 1)), -300);
    /// assert_eq!(zone.offset_at(SPRING), -240);
    /// ```
    pub fn offset_at(self, at: WallTime) -> i32 {
        let passed = self.changes.iter().take_while(|change| change.at <= at).last();
        passed.map_or(self.minutes, |change| change.minutes)
    }

    /// The moment at which local clocks show this many milliseconds after 1970-01-01 at midnight. What they show twice
    /// is the first of the two; what they skip is as much later as the clocks were set forward.
    pub(super) fn moment(self, local_ms: i64) -> WallTime {
        let with = |minutes: i32| {
            u64::try_from(local_ms - i64::from(minutes) * 60_000).map_or(WallTime::EPOCH, WallTime::from_unix_ms)
        };
        let near = with(0);
        let day = Millis::from_days(1);
        let (before, after) = (self.offset_at(near - day), self.offset_at(near + day));
        let (early, late) = (with(before.max(after)), with(before.min(after)));
        let is_right = |moment: WallTime, minutes: i32| self.offset_at(moment) == minutes;
        if is_right(early, before.max(after)) {
            early
        } else if is_right(late, before.min(after)) {
            late
        } else {
            with(before)
        }
    }
}

/// The offset at `from` and its changes until `to`, of a zone that is known by its offset at any moment. Calls
/// `offset_at` once for each two weeks, and 30 times for each change.
pub fn offset_changes(offset_at: impl Fn(WallTime) -> i32, from: WallTime, to: WallTime) -> (i32, Vec<OffsetChange>) {
    let first = offset_at(from);
    let (mut at, mut minutes, mut changes) = (from, first, Vec::new());
    while at < to {
        let next = at + STEP;
        let then = offset_at(next);
        if then != minutes {
            let (mut before, mut after) = (at.unix_ms(), next.unix_ms());
            while after - before > 1 {
                let middle = before + (after - before) / 2;
                if offset_at(WallTime::from_unix_ms(middle)) == minutes {
                    before = middle;
                } else {
                    after = middle;
                }
            }
            changes.push(OffsetChange { at: WallTime::from_unix_ms(after), minutes: then });
        }
        (at, minutes) = (next, then);
    }
    (first, changes)
}
