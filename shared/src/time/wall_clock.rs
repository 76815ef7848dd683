//! The current time and the shop's time zone offset, passed in from outside.

use super::{Day, Due, WallTime};
use chrono::{DateTime, Duration, NaiveDate, NaiveTime, Timelike};

/// The current time with the shop's offset from UTC. The core has no clock of its own.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct WallClock {
    /// The current time.
    pub now: WallTime,
    /// Minutes that local time is ahead of UTC; negative in the west.
    pub offset_minutes: i32,
}

impl WallClock {
    /// The local day of a moment.
    pub fn day_of(self, at: WallTime) -> Day {
        Day::new(self.local(at).date_naive())
    }

    /// The current local day.
    pub fn today(self) -> Day {
        self.day_of(self.now)
    }

    /// Minutes after local midnight of a moment.
    pub fn minutes_after_midnight(self, at: WallTime) -> u16 {
        let time = self.local(at).time();
        (time.hour() * 60 + time.minute()) as u16
    }

    /// The moment at which the local clock shows these minutes after midnight on a day. Uses the current offset
    /// for every day.
    pub fn moment(self, day: Day, minutes: u16) -> WallTime {
        let midnight = day.date().and_time(NaiveTime::MIN).and_utc().timestamp_millis();
        let local = midnight + (i64::from(minutes) - i64::from(self.offset_minutes)) * 60_000;
        u64::try_from(local).map_or(WallTime::EPOCH, WallTime::from_unix_ms)
    }

    /// The moment at which a job is due.
    pub fn due_moment(self, due: Due) -> WallTime {
        self.moment(due.day, due.minutes)
    }

    fn local(self, at: WallTime) -> DateTime<chrono::Utc> {
        let shifted = i64::try_from(at.unix_ms()).unwrap_or(0) + i64::from(self.offset_minutes) * 60_000;
        DateTime::from_timestamp_millis(shifted)
            .unwrap_or_else(|| NaiveDate::default().and_time(NaiveTime::MIN).and_utc() + Duration::zero())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn local_time_reads_back() {
        // 20:30 UTC is 15:30 five hours west.
        let clock = WallClock { now: WallTime::from_unix_ms(1_795_638_600_000), offset_minutes: -300 };
        assert_eq!(clock.today().to_string(), "2026-11-25");
        assert_eq!(clock.minutes_after_midnight(clock.now), 15 * 60 + 30);
        assert_eq!(clock.moment(clock.today(), 930), clock.now);
        let east = WallClock { offset_minutes: 345, ..clock };
        assert_eq!(east.today().to_string(), "2026-11-26");
    }
}
