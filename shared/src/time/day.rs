//! A calendar day without a time zone.

use crate::codec::{Encode, Reader};
use chrono::{Datelike, Days, NaiveDate};
use serde::de::Error;
use serde::{Deserialize, Deserializer, Serialize, Serializer};
use std::fmt;

/// A day of the shop's local calendar (ISO 8601, proleptic Gregorian).
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug, Hash)]
pub struct Day {
    date: NaiveDate,
}

impl Day {
    /// From a calendar date.
    pub fn new(date: NaiveDate) -> Self {
        Self { date }
    }

    /// Parses the ISO 8601 form `2026-11-25`. `None` for any other spelling, for dates that do not exist, and for
    /// years outside 1970 to 2499.
    pub fn from_iso(text: &str) -> Option<Self> {
        let date: NaiveDate = text.parse().ok()?;
        // chrono also reads signs, blanks and days without a leading zero; the stored form is one spelling.
        ((1970..2500).contains(&date.year()) && date.to_string() == text).then_some(Self { date })
    }

    /// The calendar date.
    pub fn date(self) -> NaiveDate {
        self.date
    }

    /// Day of the week, 0 for Monday to 6 for Sunday.
    pub fn weekday(self) -> usize {
        self.date.weekday().num_days_from_monday() as usize
    }

    /// The day this many days later, at most the last one that can be represented.
    #[must_use]
    pub fn plus_days(self, days: u64) -> Self {
        Self { date: self.date.checked_add_days(Days::new(days)).unwrap_or(NaiveDate::MAX) }
    }

    /// The day this many days earlier, at most the first one that can be represented.
    #[must_use]
    pub fn minus_days(self, days: u64) -> Self {
        Self { date: self.date.checked_sub_days(Days::new(days)).unwrap_or(NaiveDate::MIN) }
    }

    /// Number of days from `other` to this day; negative if this is earlier.
    pub fn days_after(self, other: Self) -> i64 {
        (self.date - other.date).num_days()
    }
}

impl fmt::Display for Day {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:04}-{:02}-{:02}", self.date.year(), self.date.month(), self.date.day())
    }
}

impl Encode for Day {
    fn encode(&self, out: &mut Vec<u8>) {
        self.date.num_days_from_ce().encode(out);
    }

    fn decode(from: &mut Reader<'_>) -> Self {
        let date = NaiveDate::from_num_days_from_ce_opt(i32::decode(from));
        Self {
            date: date.unwrap_or_else(|| {
                from.fail();
                NaiveDate::default()
            }),
        }
    }
}

impl Serialize for Day {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        if serializer.is_human_readable() {
            serializer.collect_str(self)
        } else {
            self.date.num_days_from_ce().serialize(serializer)
        }
    }
}

impl<'de> Deserialize<'de> for Day {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let day = if deserializer.is_human_readable() {
            Self::from_iso(&String::deserialize(deserializer)?)
        } else {
            NaiveDate::from_num_days_from_ce_opt(i32::deserialize(deserializer)?).map(Self::new)
        };
        day.ok_or_else(|| D::Error::custom("not a day"))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_day_reads_back_and_knows_its_weekday() {
        let day = Day::from_iso("2026-11-25").unwrap();
        assert_eq!(day.to_string(), "2026-11-25");
        assert_eq!(day.weekday(), 2);
        assert_eq!(day.plus_days(6).days_after(day), 6);
        for text in [
            "",
            "2026-13-01",
            "2026-02-30",
            "1066-10-14",
            "25.11.2026",
            "2026-11-25-1",
            "2026-11",
            "2026-1a-25",
            "2026-+1-25",
        ] {
            assert_eq!(Day::from_iso(text), None, "{text}");
        }
    }
}
