//! When the shop closes.

use super::Closings;
use crate::time::{DAY_TURN, Day, TimeOfDay, WallClock, WallTime};

/// Minutes in a day.
const DAY: u16 = 24 * 60;

/// When the shop closes on the current working day; `None` on a day off. A closing before [`DAY_TURN`] is in the night
/// after the day.
pub fn closing_today(closings: &Closings, clock: WallClock) -> Option<WallTime> {
    closing_on(closings, clock.work_day(), clock)
}

/// When the shop closes on a working day; `None` on a day off.
pub fn closing_on(closings: &Closings, day: Day, clock: WallClock) -> Option<WallTime> {
    closings.on(day).map(|time| clock.moment(day.plus_days(u64::from(time < DAY_TURN)), time))
}

/// A closing time this many minutes later, or earlier if negative, within its working day.
pub fn moved_closing(closing: TimeOfDay, minutes: i32) -> TimeOfDay {
    let turn = DAY_TURN.minutes();
    let from_turn = i32::from((closing.minutes() + DAY - turn) % DAY);
    let moved = (from_turn + minutes).clamp(0, i32::from(DAY) - 1);
    TimeOfDay::from_minutes((moved as u16 + turn) % DAY)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::time::wall;

    #[test]
    fn a_single_day_differs_from_its_weekday() {
        let mut closings = Closings::default();
        let wednesday = Day::from_iso("2026-11-25").unwrap();
        let three = TimeOfDay::at(15, 0);
        closings.days.insert(wednesday, three);
        assert_eq!(closings.on(wednesday), Some(three));
        assert_eq!(closings.on(wednesday.plus_days(7)), Some(TimeOfDay::at(17, 0)));
        assert_eq!(closings.on(wednesday.plus_days(4)), None);
        let clock = WallClock::fixed(wall(1_795_600_000_000), 60);
        assert_eq!(closing_today(&closings, clock), Some(clock.moment(wednesday, three)));
    }

    #[test]
    fn a_day_off_closes_as_the_last_such_day_that_was_worked() {
        let [six, three] = [TimeOfDay::at(18, 0), TimeOfDay::at(15, 0)];
        let mut closings = Closings::default();
        let saturday = Day::from_iso("2026-11-28").unwrap();
        assert_eq!(closings.usual(saturday), TimeOfDay::at(17, 0));
        closings.week[4] = Some(six);
        assert_eq!(closings.usual(saturday), six, "as the day before");
        assert_eq!(closings.usual(saturday.plus_days(1)), six, "Saturday is a day off too");
        closings.days.insert(saturday, three);
        assert_eq!(closings.usual(saturday.plus_days(7)), three);
        assert_eq!(closings.usual(saturday.plus_days(8)), six, "a Sunday is no Saturday");
        closings.week = [None; 7];
        assert_eq!(closings.usual(saturday), TimeOfDay::at(17, 0), "nothing earlier is known");
    }

    #[test]
    fn a_closing_moves_past_midnight_and_back_but_not_out_of_its_day() {
        let moved = |hour, minute, by| moved_closing(TimeOfDay::at(hour, minute), by);
        assert_eq!(moved(17, 0, 30), TimeOfDay::at(17, 30));
        assert_eq!(moved(23, 30, 30), TimeOfDay::MIDNIGHT);
        assert_eq!(moved(0, 30, 30), TimeOfDay::at(1, 0));
        assert_eq!(moved(0, 0, -30), TimeOfDay::at(23, 30));
        assert_eq!(moved(3, 50, 30), TimeOfDay::at(3, 59));
        assert_eq!(moved(4, 10, -30), DAY_TURN);
    }
}
