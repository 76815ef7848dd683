//! The current time and the shop's time zone, passed in from outside.

use super::{Day, Due, WallTime, Zone};
use chrono::{DateTime, NaiveDateTime, NaiveTime, Timelike};

/// The current time in the shop's time zone. The core has no clock of its own.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct WallClock {
    /// The current time.
    pub now: WallTime,
    /// The time zone.
    pub zone: Zone,
}

/// When the working day turns, in minutes after midnight: what is printed before four in the morning belongs to the day
/// before, and so does a closing before four. Our own choice: the latest shifts end before it, and the earliest begin
/// after it.
pub const DAY_TURN: u16 = 4 * 60;

impl WallClock {
    /// A clock in a zone whose offset from UTC, in minutes, never changes.
    pub const fn fixed(now: WallTime, offset_minutes: i32) -> Self {
        Self { now, zone: Zone::fixed(offset_minutes) }
    }

    /// The local day of a moment.
    pub fn day_of(self, at: WallTime) -> Day {
        Day::new(self.local(at).date())
    }

    /// The current local day.
    pub fn today(self) -> Day {
        self.day_of(self.now)
    }

    /// The working day of a moment: the local day, but the day before until [`DAY_TURN`].
    pub fn work_day_of(self, at: WallTime) -> Day {
        let day = self.day_of(at);
        if self.minutes_after_midnight(at) < DAY_TURN { day.minus_days(1) } else { day }
    }

    /// The current working day.
    pub fn work_day(self) -> Day {
        self.work_day_of(self.now)
    }

    /// Minutes after local midnight of a moment.
    pub fn minutes_after_midnight(self, at: WallTime) -> u16 {
        let time = self.local(at).time();
        (time.hour() * 60 + time.minute()) as u16
    }

    /// The moment at which the local clock shows these minutes after midnight on a day. If it shows them twice, since
    /// it was set back, the first time; if it skips them, as much later as it was set forward.
    pub fn moment(self, day: Day, minutes: u16) -> WallTime {
        let midnight = day.date().and_time(NaiveTime::MIN).and_utc().timestamp_millis();
        self.zone.moment(midnight + i64::from(minutes) * 60_000)
    }

    /// The moment at which a job is due.
    pub fn due_moment(self, due: Due) -> WallTime {
        self.moment(due.day, due.minutes)
    }

    fn local(self, at: WallTime) -> NaiveDateTime {
        let shifted = i64::try_from(at.unix_ms()).unwrap_or(0) + i64::from(self.zone.offset_at(at)) * 60_000;
        DateTime::from_timestamp_millis(shifted).map(|local| local.naive_utc()).unwrap_or_default()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn local_time_reads_back() {
        // 20:30 UTC is 15:30 five hours west.
        let clock = WallClock::fixed(WallTime::from_unix_ms(1_795_638_600_000), -300);
        assert_eq!(clock.today().to_string(), "2026-11-25");
        assert_eq!(clock.minutes_after_midnight(clock.now), 15 * 60 + 30);
        assert_eq!(clock.moment(clock.today(), 930), clock.now);
        let east = WallClock::fixed(clock.now, 345);
        assert_eq!(east.today().to_string(), "2026-11-26");
    }

    #[test]
    fn the_working_day_turns_at_four() {
        let clock = WallClock::fixed(WallTime::from_unix_ms(1_795_638_600_000), -300);
        let today = clock.today();
        for (minutes, day) in [(0, -1), (DAY_TURN - 1, -1), (DAY_TURN, 0), (23 * 60 + 59, 0)] {
            assert_eq!(clock.work_day_of(clock.moment(today, minutes)).days_after(today), day, "{minutes}");
        }
    }

    #[test]
    fn work_from_seven_to_one_stays_on_its_working_day_after_a_move_of_three_hours() {
        let home = WallClock::fixed(WallTime::from_unix_ms(1_795_638_600_000), -300);
        let day = home.today();
        for moved in [-180, -60, 60, 180] {
            let away = WallClock::fixed(home.now, -300 + moved);
            for minutes in (7 * 60..25 * 60).step_by(7).chain([25 * 60 - 1]) {
                assert_eq!(away.work_day_of(home.moment(day, minutes)), day, "{minutes} moved by {moved}");
            }
        }
        let away = WallClock::fixed(home.now, -300 + 180);
        assert_ne!(away.work_day_of(home.moment(day, 25 * 60)), day, "later it does not");
    }
}
