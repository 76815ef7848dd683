//! When the shop closes.

use super::Closings;
use crate::time::{DAY_TURN, Day, WallClock, WallTime};

/// Minutes in a day.
const DAY: u16 = 24 * 60;

/// When the shop closes on the current working day; `None` on a day off. A closing before [`DAY_TURN`] is in the night
/// after the day.
pub fn closing_today(closings: &Closings, clock: WallClock) -> Option<WallTime> {
    closing_on(closings, clock.work_day(), clock)
}

/// When the shop closes on a working day; `None` on a day off.
pub fn closing_on(closings: &Closings, day: Day, clock: WallClock) -> Option<WallTime> {
    closings.on(day).map(|minutes| clock.moment(day.plus_days(u64::from(minutes < DAY_TURN)), minutes))
}

/// A closing time this many minutes later, or earlier if negative, within its working day. In minutes after midnight.
pub fn moved_closing(minutes: u16, by: i32) -> u16 {
    let from_turn = i32::from((minutes + DAY - DAY_TURN) % DAY);
    let moved = (from_turn + by).clamp(0, i32::from(DAY) - 1);
    (moved as u16 + DAY_TURN) % DAY
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::time::wall;

    #[test]
    fn a_single_day_differs_from_its_weekday() {
        let mut closings = Closings::default();
        let wednesday = Day::from_iso("2026-11-25").unwrap();
        closings.days.insert(wednesday, 15 * 60);
        assert_eq!(closings.on(wednesday), Some(900));
        assert_eq!(closings.on(wednesday.plus_days(7)), Some(1020));
        assert_eq!(closings.on(wednesday.plus_days(4)), None);
        let clock = WallClock::fixed(wall(1_795_600_000_000), 60);
        assert_eq!(closing_today(&closings, clock), Some(clock.moment(wednesday, 900)));
    }

    #[test]
    fn a_closing_moves_past_midnight_and_back_but_not_out_of_its_day() {
        assert_eq!(moved_closing(17 * 60, 30), 17 * 60 + 30);
        assert_eq!(moved_closing(23 * 60 + 30, 30), 0);
        assert_eq!(moved_closing(30, 30), 60);
        assert_eq!(moved_closing(0, -30), 23 * 60 + 30);
        assert_eq!(moved_closing(DAY_TURN - 10, 30), DAY_TURN - 1);
        assert_eq!(moved_closing(DAY_TURN + 10, -30), DAY_TURN);
    }
}
