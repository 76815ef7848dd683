//! Work by quarters of an hour, so that it can be summed by day in any time zone.

use crate::codec::Encode;
use crate::time::{Day, Millis, TimeOfDay, WallClock, WallTime};
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

    /// The time of the first quarter with pieces on each of the latest working days before this one, at
    /// most `days` of them.
    pub fn first_quarters(&self, clock: WallClock, days: usize) -> Vec<TimeOfDay> {
        let mut found: Vec<(Day, TimeOfDay)> = Vec::with_capacity(days);
        for (quarter, _) in self.quarters.iter().rev().filter(|(_, row)| row.pieces > 0) {
            let at = WallTime::from_unix_ms(quarter * QUARTER.ms());
            let (day, time) = (clock.work_day_of(at), clock.time_of_day(at));
            let is_same = found.last().is_some_and(|(latest, _)| *latest == day);
            if is_same {
                found.pop();
            } else if day >= clock.work_day() {
                continue;
            } else if found.len() == days {
                break;
            }
            found.push((day, time));
        }
        found.into_iter().map(|(_, time)| time).collect()
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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_full_tally_makes_room_by_its_oldest_quarter_only() {
        let quarter = |number: usize| WallTime::from_unix_ms((2_000_000 + number as u64) * QUARTER.ms());
        let mut tally = Tally::default();
        for number in 0..MOST_QUARTERS {
            tally.row_mut(quarter(number)).pieces += 1;
        }
        let years_ahead = quarter(MOST_QUARTERS * 10);
        tally.row_mut(years_ahead).pieces += 1;
        assert_eq!(tally.quarters.len(), MOST_QUARTERS);
        assert_eq!(tally.quarters.keys().next(), Some(&2_000_001), "one fact takes one place");
        let today = quarter(MOST_QUARTERS - 1);
        tally.row_mut(today).pieces += 1;
        assert_eq!((tally.row_mut(today).pieces, tally.quarters.len()), (2, MOST_QUARTERS), "there is room in it");
    }
}
