//! Work by quarters of an hour, so that it can be summed by day in any time zone.

use crate::codec::Encode;
use crate::collections::Map;
use crate::time::{Day, Millis, WallClock, WallTime};

/// A quarter of an hour. The offset of every civil time zone from UTC is a whole number of quarters.
const QUARTER: Millis = Millis::from_minutes(15);

/// Number of quarters kept: 120 days.
const QUARTERS_KEPT: u64 = 120 * 24 * 4;

/// Work in one quarter of an hour, or in one day.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default, Encode)]
pub struct TallyRow {
    /// Good pieces.
    pub pieces: i64,
    /// Spoiled pieces.
    pub misprints: i64,
    /// Working time.
    pub active: Millis,
}

/// The shop's recent work by quarters of an hour since 1970-01-01 UTC.
#[derive(Clone, Debug, PartialEq, Eq, Default, Encode)]
pub struct Tally {
    quarters: Map<u64, TallyRow>,
}

impl Tally {
    /// The row of the quarter that contains `moment`.
    pub(crate) fn row_mut(&mut self, moment: WallTime) -> &mut TallyRow {
        let quarter = moment.unix_ms() / QUARTER.ms();
        // Facts are folded by rising stamp: the quarter is nearly always the latest or a new one.
        if self.quarters.keys().next_back().is_none_or(|latest| *latest < quarter) {
            let oldest = quarter.saturating_sub(QUARTERS_KEPT);
            if self.quarters.keys().next().is_some_and(|first| *first < oldest) {
                self.quarters.retain(|quarter, _| *quarter >= oldest);
            }
        }
        self.quarters.get_or_insert_default(quarter)
    }

    /// Sums by local day, the oldest first, without days of no work.
    pub fn days(&self, clock: WallClock) -> Map<Day, TallyRow> {
        let mut days: Map<Day, TallyRow> = Map::new();
        for (quarter, row) in &self.quarters {
            let day = days.get_or_insert_default(clock.day_of(WallTime::from_unix_ms(quarter * QUARTER.ms())));
            day.pieces += row.pieces;
            day.misprints += row.misprints;
            day.active += row.active;
        }
        days
    }
}
