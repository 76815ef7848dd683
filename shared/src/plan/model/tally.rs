//! Work by quarters of an hour, so that it can be summed by day in any time zone.

use crate::codec::Encode;
use crate::time::{Day, Millis, WallClock, WallTime};
use std::collections::BTreeMap;

/// A quarter of an hour. The offset of every civil time zone from UTC is a whole number of quarters.
const QUARTER: Millis = Millis::from_minutes(15);

/// Most quarters kept, those with work only: half a year of ten-hour days.
const MOST_QUARTERS: usize = 7_200;

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
    quarters: BTreeMap<u64, TallyRow>,
}

impl Tally {
    /// The row of the quarter that contains `moment`.
    pub(crate) fn row_mut(&mut self, moment: WallTime) -> &mut TallyRow {
        let quarter = moment.unix_ms() / QUARTER.ms();
        // By number and not by age: one fact dated years ahead makes room for itself only.
        if self.quarters.len() >= MOST_QUARTERS && !self.quarters.contains_key(&quarter) {
            self.quarters.pop_first();
        }
        self.quarters.entry(quarter).or_default()
    }

    /// Sums by working day, the oldest first, without days of no work.
    pub fn days(&self, clock: WallClock) -> BTreeMap<Day, TallyRow> {
        let mut days: BTreeMap<Day, TallyRow> = BTreeMap::new();
        for (quarter, row) in &self.quarters {
            let day = days.entry(clock.work_day_of(WallTime::from_unix_ms(quarter * QUARTER.ms()))).or_default();
            day.pieces += row.pieces;
            day.misprints += row.misprints;
            day.active += row.active;
        }
        days
    }
}
