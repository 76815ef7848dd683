//! The current time and the shop's time zone, passed in from outside.

use super::{Day, Due, TimeOfDay, WallTime, Zone};
use chrono::{DateTime, NaiveDateTime, NaiveTime, Timelike};

/// The current time in the shop's time zone. The core has no clock of its own.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct WallClock {
    /// The current time.
    pub now: WallTime,
    /// The time zone.
    pub zone: Zone,
}

/// When the working day turns: what is printed before four in the morning belongs to the day
/// before, and so does a closing before four. Our own choice: the latest shifts end before it, and the earliest begin
/// after it.
pub const DAY_TURN: TimeOfDay = TimeOfDay::at(4, 0);

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
        if self.time_of_day(at) < DAY_TURN { day.minus_days(1) } else { day }
    }

    /// The current working day.
    pub fn work_day(self) -> Day {
        self.work_day_of(self.now)
    }

    /// The local time of day of a moment.
    pub fn time_of_day(self, at: WallTime) -> TimeOfDay {
        let time = self.local(at).time();
        TimeOfDay::at(time.hour() as u16, time.minute() as u16)
    }

    /// The moment at which the local clock shows this time on a day. If it shows it twice, since it was set back, the
    /// first time; if it skips it, as much later as it was set forward.
    pub fn moment(self, day: Day, time: TimeOfDay) -> WallTime {
        let midnight = day.date().and_time(NaiveTime::MIN).and_utc().timestamp_millis();
        self.zone.moment(midnight + i64::from(time.minutes()) * 60_000)
    }

    /// The moment at which a job is due.
    pub fn due_moment(self, due: Due) -> WallTime {
        self.moment(due.day, due.time)
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
        assert_eq!(clock.time_of_day(clock.now), TimeOfDay::at(15, 30));
        assert_eq!(clock.moment(clock.today(), TimeOfDay::at(15, 30)), clock.now);
        let east = WallClock::fixed(clock.now, 345);
        assert_eq!(east.today().to_string(), "2026-11-26");
    }

    #[test]
    fn the_working_day_turns_at_four() {
        let clock = WallClock::fixed(WallTime::from_unix_ms(1_795_638_600_000), -300);
        let today = clock.today();
        for (time, day) in [(TimeOfDay::MIDNIGHT, -1), (TimeOfDay::at(3, 59), -1), (DAY_TURN, 0), (TimeOfDay::LAST, 0)]
        {
            assert_eq!(clock.work_day_of(clock.moment(today, time)).days_after(today), day, "{time}");
        }
    }

    #[test]
    fn work_stays_on_its_working_day_after_a_move_of_three_hours() {
        let home = WallClock::fixed(WallTime::from_unix_ms(1_795_638_600_000), -300);
        let day = home.today();
        for moved in [-180, -60, 60, 180] {
            let away = WallClock::fixed(home.now, -300 + moved);
            for minutes in (7 * 60..25 * 60).step_by(7).chain([25 * 60 - 1]) {
                let time = TimeOfDay::from_minutes(minutes);
                assert_eq!(away.work_day_of(home.moment(day, time)), day, "{time} moved by {moved}");
            }
        }
        let away = WallClock::fixed(home.now, -300 + 180);
        assert_ne!(away.work_day_of(home.moment(day, TimeOfDay::from_minutes(25 * 60))), day, "later it does not");
    }
}
