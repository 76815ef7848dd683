//! What was printed when, in quarters of an hour, so that any clock can cut it into days.

use crate::codec::Encode;
use crate::collections::Map;
use crate::time::{Day, WallClock};
use serde::{Deserialize, Serialize};

/// A quarter of an hour in milliseconds. Every civil time zone is a whole number of them from UTC.
const QUARTER: u64 = 15 * 60 * 1000;

/// How many quarters are kept: 120 days. The shop's usual needs no more.
const KEPT: u64 = 120 * 24 * 4;

/// What happened in one quarter of an hour, or one day.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default, Serialize, Deserialize, Encode)]
pub struct TallyRow {
    /// Good pieces.
    pub pieces: i64,
    /// Spoiled pieces.
    pub misprints: i64,
    /// Time spent pulling, in milliseconds.
    pub active: u64,
}

/// The shop's recent work by quarters of an hour since 1970.
#[derive(Clone, Debug, PartialEq, Eq, Default, Serialize, Deserialize, Encode)]
pub struct Tally {
    quarters: Map<u64, TallyRow>,
}

impl Tally {
    /// The row of the quarter that holds a moment.
    pub(crate) fn at(&mut self, moment: u64) -> &mut TallyRow {
        let quarter = moment / QUARTER;
        // Facts are folded by rising stamp, so that a quarter is nearly always the latest or a new one.
        if self.quarters.keys().next_back().is_none_or(|latest| *latest < quarter) {
            let oldest = quarter.saturating_sub(KEPT);
            if self.quarters.keys().next().is_some_and(|first| *first < oldest) {
                self.quarters.retain(|quarter, _| *quarter >= oldest);
            }
        }
        self.quarters.or_default(quarter)
    }

    /// Sums by local day, oldest first; days without work are left out.
    pub fn days(&self, clock: WallClock) -> Map<Day, TallyRow> {
        let mut days: Map<Day, TallyRow> = Map::new();
        for (quarter, row) in &self.quarters {
            let day = days.or_default(clock.day_of(quarter * QUARTER));
            day.pieces += row.pieces;
            day.misprints += row.misprints;
            day.active += row.active;
        }
        days
    }
}
