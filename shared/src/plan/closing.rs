//! When the shop closes.

use crate::codec::Encode;
use crate::collections::Map;
use crate::time::{Day, WallClock};
use serde::{Deserialize, Serialize};

/// Closing times: by weekday, and for single days that differ.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Encode)]
pub struct Closings {
    /// Minutes after midnight, Monday first; none on a day off.
    pub week: [Option<u16>; 7],
    /// Days that differ.
    pub days: Map<Day, u16>,
}

/// Five in the afternoon, Monday to Friday: where a new shop starts. Common practice, no source.
const FIVE: Option<u16> = Some(17 * 60);

impl Default for Closings {
    fn default() -> Self {
        Self { week: [FIVE, FIVE, FIVE, FIVE, FIVE, None, None], days: Map::new() }
    }
}

impl Closings {
    /// Minutes after midnight at which the shop closes on a day; none on a day off.
    pub fn on(&self, day: Day) -> Option<u16> {
        self.days.get(&day).copied().or(self.week[day.weekday()])
    }
}

/// The moment the shop closes today; none on a day off.
pub fn closing_of(closings: &Closings, clock: WallClock) -> Option<u64> {
    let today = clock.today();
    closings.on(today).map(|minutes| clock.moment(today, minutes))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_single_day_differs_from_its_weekday() {
        let mut closings = Closings::default();
        let wednesday = Day::from_iso("2026-11-25").unwrap();
        closings.days.insert(wednesday, 15 * 60);
        assert_eq!(closings.on(wednesday), Some(900));
        assert_eq!(closings.on(wednesday.plus_days(7)), Some(1020));
        assert_eq!(closings.on(wednesday.plus_days(4)), None);
        let clock = WallClock { now: 1_795_600_000_000, offset_minutes: 60 };
        assert_eq!(closing_of(&closings, clock), Some(clock.moment(wednesday, 900)));
    }
}
