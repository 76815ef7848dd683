//! A time of day.

use crate::codec::Encode;
use crate::units::parse_whole;
use serde::{Deserialize, Serialize};
use std::fmt;

/// A time of day on the clock on the wall, in whole minutes after midnight. Stored and exchanged as the bare number.
///
/// A due time from a file may be later than 23:59: it is kept as it is, and is that long after midnight.
///
/// ```
/// use lastpull_core::time::TimeOfDay;
///
/// let due = TimeOfDay::at(16, 30);
/// assert_eq!(due.minutes(), 16 * 60 + 30);
/// assert_eq!(TimeOfDay::parse("16:30"), Some(due));
/// assert_eq!(due.to_string(), "16:30");
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Default, Serialize, Deserialize, Encode)]
#[serde(transparent)]
pub struct TimeOfDay {
    minutes: u16,
}

impl TimeOfDay {
    /// When the day begins.
    pub const MIDNIGHT: Self = Self { minutes: 0 };
    /// The last minute of the day, 23:59.
    pub const LAST: Self = Self::at(23, 59);

    /// At an hour from 0 to 23 and a minute from 0 to 59.
    pub const fn at(hour: u16, minute: u16) -> Self {
        Self { minutes: hour * 60 + minute }
    }

    /// From minutes after midnight.
    pub const fn from_minutes(minutes: u16) -> Self {
        Self { minutes }
    }

    /// Minutes after midnight.
    pub const fn minutes(self) -> u16 {
        self.minutes
    }

    /// The hour, from 0 to 23, and more if it is later than 23:59.
    pub const fn hour(self) -> u16 {
        self.minutes / 60
    }

    /// The minute of the hour.
    pub const fn minute(self) -> u16 {
        self.minutes % 60
    }

    /// Whether it is a time that a clock shows: 23:59 or earlier.
    pub fn is_on_clock(self) -> bool {
        self <= Self::LAST
    }

    /// Parses a time in 24-hour format, such as `16:30`; what follows the minutes is not read. `None` if it is no time
    /// that a clock shows.
    pub fn parse(text: &str) -> Option<Self> {
        let (hour, minute) = text.trim().split_once(':')?;
        let hour = parse_whole(hour, 0, 23).ok()?;
        let minute = parse_whole(minute.get(..2)?, 0, 59).ok()?;
        Some(Self::at(hour as u16, minute as u16))
    }
}

/// In 24-hour format, such as `08:05`.
impl fmt::Display for TimeOfDay {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:02}:{:02}", self.hour(), self.minute())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::codec::{from_bytes, to_bytes};

    #[test]
    fn every_minute_of_the_day_reads_back() {
        for minutes in 0..24 * 60 {
            let time = TimeOfDay::from_minutes(minutes);
            assert_eq!(TimeOfDay::parse(&time.to_string()), Some(time));
            assert_eq!(TimeOfDay::at(time.hour(), time.minute()), time);
            assert!(time.is_on_clock());
        }
        assert_eq!(TimeOfDay::LAST.minutes(), 24 * 60 - 1);
        assert_eq!(TimeOfDay::at(8, 5).to_string(), "08:05");
    }

    #[test]
    fn what_no_clock_shows_is_not_read() {
        for (text, time) in [
            (" 7:05 ", Some(TimeOfDay::at(7, 5))),
            ("16:30:00", Some(TimeOfDay::at(16, 30))),
            ("24:00", None),
            ("12:60", None),
            ("-1:00", None),
            ("12:5", None),
            ("1200", None),
            ("noon", None),
            ("", None),
        ] {
            assert_eq!(TimeOfDay::parse(text), time, "{text}");
        }
    }

    #[test]
    fn a_time_is_stored_as_its_minutes_also_beyond_the_day() {
        for minutes in [0, 990, 24 * 60 - 1, 24 * 60, u16::MAX] {
            let time = TimeOfDay::from_minutes(minutes);
            assert_eq!(to_bytes(&time), to_bytes(&minutes));
            assert_eq!(from_bytes::<TimeOfDay>(&to_bytes(&minutes)), Some(time));
            assert_eq!(serde_json::to_string(&time).unwrap(), minutes.to_string());
            assert_eq!(serde_json::from_str::<TimeOfDay>(&minutes.to_string()).unwrap(), time);
            assert_eq!(time.is_on_clock(), minutes < 24 * 60);
        }
        assert!(serde_json::from_str::<TimeOfDay>("65536").is_err());
    }
}
