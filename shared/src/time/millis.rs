//! A span of time.

use crate::codec::Encode;
use crate::units::Seconds;
use std::iter::Sum;
use std::ops::{Add, AddAssign, Div, Mul, Sub};

/// A span between two moments, in whole milliseconds. Packed as the bare number. ([`Seconds`] is a time set on
/// a machine.)
///
/// Sums and products stop at the largest span, differences at zero.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Default, Encode)]
pub struct Millis {
    ms: u64,
}

impl Millis {
    /// No time.
    pub const ZERO: Self = Self { ms: 0 };

    /// From milliseconds.
    pub const fn from_ms(ms: u64) -> Self {
        Self { ms }
    }

    /// From seconds, cut to a whole millisecond; zero if negative.
    pub fn from_seconds(seconds: f64) -> Self {
        Self { ms: (seconds * 1000.0) as u64 }
    }

    /// From minutes.
    pub const fn from_minutes(minutes: u64) -> Self {
        Self { ms: minutes * 60_000 }
    }

    /// From hours.
    pub const fn from_hours(hours: u64) -> Self {
        Self::from_minutes(hours * 60)
    }

    /// From days of 24 hours.
    pub const fn from_days(days: u64) -> Self {
        Self::from_hours(days * 24)
    }

    /// In milliseconds.
    pub const fn ms(self) -> u64 {
        self.ms
    }

    /// In seconds.
    pub fn seconds(self) -> f64 {
        self.ms as f64 / 1000.0
    }

    /// In minutes.
    pub fn minutes(self) -> f64 {
        self.ms as f64 / 60_000.0
    }

    /// Number of whole seconds.
    pub const fn whole_seconds(self) -> u64 {
        self.ms / 1000
    }

    /// Number of whole minutes.
    pub const fn whole_minutes(self) -> u64 {
        self.ms / 60_000
    }

    /// The same without what is beyond its last whole minute.
    pub const fn cut_to_minute(self) -> Self {
        Self::from_minutes(self.whole_minutes())
    }

    /// Number of whole hours.
    pub const fn whole_hours(self) -> u64 {
        self.whole_minutes() / 60
    }

    /// Number of whole days of 24 hours.
    pub const fn whole_days(self) -> u64 {
        self.whole_hours() / 24
    }
}

impl From<Seconds> for Millis {
    fn from(time: Seconds) -> Self {
        Self { ms: u64::from(time.milliseconds()) }
    }
}

impl Add for Millis {
    type Output = Self;

    fn add(self, other: Self) -> Self {
        Self { ms: self.ms.saturating_add(other.ms) }
    }
}

impl AddAssign for Millis {
    fn add_assign(&mut self, other: Self) {
        *self = *self + other;
    }
}

impl Sub for Millis {
    type Output = Self;

    fn sub(self, other: Self) -> Self {
        Self { ms: self.ms.saturating_sub(other.ms) }
    }
}

impl Mul<u64> for Millis {
    type Output = Self;

    fn mul(self, times: u64) -> Self {
        Self { ms: self.ms.saturating_mul(times) }
    }
}

impl Mul<Millis> for u64 {
    type Output = Millis;

    fn mul(self, span: Millis) -> Millis {
        span * self
    }
}

impl Div<u64> for Millis {
    type Output = Self;

    fn div(self, parts: u64) -> Self {
        Self { ms: self.ms / parts }
    }
}

impl Sum for Millis {
    fn sum<I: Iterator<Item = Self>>(spans: I) -> Self {
        spans.fold(Self::ZERO, Add::add)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::codec::{from_bytes, to_bytes};
    use crate::time::WallTime;

    #[test]
    fn sums_and_differences_stop_at_the_ends() {
        let most = Millis::from_ms(u64::MAX);
        assert_eq!(most + Millis::from_ms(1), most);
        assert_eq!(most * 2, most);
        assert_eq!(Millis::from_ms(3) - Millis::from_ms(5), Millis::ZERO);
        assert_eq!(WallTime::MAX + Millis::from_ms(1), WallTime::MAX);
        assert_eq!(WallTime::EPOCH - Millis::from_ms(1), WallTime::EPOCH);
        assert_eq!(Millis::from_seconds(-4.0), Millis::ZERO);
        assert_eq!(Millis::from_seconds(1.9999), Millis::from_ms(1_999));
    }

    #[test]
    fn whole_minutes_and_days_are_cut() {
        let span = Millis::from_days(2) - Millis::from_ms(1);
        assert_eq!((span.whole_days(), span.whole_minutes()), (1, 2 * 24 * 60 - 1));
        assert_eq!(span.cut_to_minute(), Millis::from_minutes(2 * 24 * 60 - 1));
    }

    #[test]
    fn moments_and_spans_are_packed_and_written_as_bare_numbers() {
        let ms = 1_795_611_600_000;
        let (moment, span) = (WallTime::from_unix_ms(ms), Millis::from_ms(ms));
        assert_eq!(to_bytes(&moment), to_bytes(&ms));
        assert_eq!(to_bytes(&span), to_bytes(&ms));
        assert_eq!(from_bytes::<WallTime>(&to_bytes(&ms)), Some(moment));
        assert_eq!(serde_json::to_string(&moment).unwrap(), "1795611600000");
        assert_eq!(serde_json::from_str::<WallTime>("1795611600000").unwrap(), moment);
        assert!(serde_json::from_str::<WallTime>("-1").is_err());
    }
}
