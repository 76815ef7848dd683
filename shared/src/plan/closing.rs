//! When the shop closes.

use super::Closings;
use crate::time::{WallClock, WallTime};

/// When the shop closes today; `None` on a day off.
pub fn closing_today(closings: &Closings, clock: WallClock) -> Option<WallTime> {
    let today = clock.today();
    closings.on(today).map(|minutes| clock.moment(today, minutes))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::time::Day;
    use crate::time::wall;

    #[test]
    fn a_single_day_differs_from_its_weekday() {
        let mut closings = Closings::default();
        let wednesday = Day::from_iso("2026-11-25").unwrap();
        closings.days.insert(wednesday, 15 * 60);
        assert_eq!(closings.on(wednesday), Some(900));
        assert_eq!(closings.on(wednesday.plus_days(7)), Some(1020));
        assert_eq!(closings.on(wednesday.plus_days(4)), None);
        let clock = WallClock { now: wall(1_795_600_000_000), offset_minutes: 60 };
        assert_eq!(closing_today(&closings, clock), Some(clock.moment(wednesday, 900)));
    }
}
