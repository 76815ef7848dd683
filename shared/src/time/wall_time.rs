//! A moment.

use super::Millis;
use crate::codec::Encode;
use serde::{Deserialize, Serialize};
use std::ops::{Add, AddAssign, Sub};

/// A moment: Unix time in whole milliseconds. Stored and exchanged as the bare number.
///
/// Sums and differences stop at the ends of the range instead of overflowing: times also come from other
/// devices' files.
///
/// ```
/// use lastpull_core::time::{Millis, WallTime};
///
/// let opening = WallTime::from_unix_ms(1_795_611_600_000);
/// let later = opening + Millis::from_minutes(90);
/// assert_eq!(later.since(opening), Millis::from_minutes(90));
/// assert_eq!(opening.since(later), Millis::ZERO);
/// assert_eq!(opening.seconds_after(later), -5_400.0);
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Default, Serialize, Deserialize, Encode)]
#[serde(transparent)]
pub struct WallTime {
    unix_ms: u64,
}

impl WallTime {
    /// 1970-01-01 at midnight UTC: earlier than every recorded moment.
    pub const EPOCH: Self = Self { unix_ms: 0 };
    /// Later than every recorded moment.
    pub const MAX: Self = Self { unix_ms: u64::MAX };

    /// From Unix time in milliseconds.
    pub const fn from_unix_ms(unix_ms: u64) -> Self {
        Self { unix_ms }
    }

    /// Unix time in milliseconds, for calendars and for the browser.
    pub const fn unix_ms(self) -> u64 {
        self.unix_ms
    }

    /// The time from `earlier` to this moment; zero if this one is the earlier.
    pub const fn since(self, earlier: Self) -> Millis {
        Millis::from_ms(self.unix_ms.saturating_sub(earlier.unix_ms))
    }

    /// Sets the moment if it is still [`EPOCH`](Self::EPOCH), the default. Called at each fact about a thing,
    /// it keeps the time of the first.
    pub(crate) fn set_once(&mut self, at: Self) {
        if *self == Self::EPOCH {
            *self = at;
        }
    }

    /// The start of the minute, hour or other span that contains this moment; spans are counted from the epoch.
    pub const fn floor(self, span: Millis) -> Self {
        Self { unix_ms: self.unix_ms - self.unix_ms % span.ms() }
    }

    /// Seconds from `other` to this moment, negative if this one is the earlier.
    pub fn seconds_after(self, other: Self) -> f64 {
        (self.unix_ms as f64 - other.unix_ms as f64) / 1000.0
    }
}

impl Add<Millis> for WallTime {
    type Output = Self;

    fn add(self, span: Millis) -> Self {
        Self { unix_ms: self.unix_ms.saturating_add(span.ms()) }
    }
}

impl AddAssign<Millis> for WallTime {
    fn add_assign(&mut self, span: Millis) {
        *self = *self + span;
    }
}

impl Sub<Millis> for WallTime {
    type Output = Self;

    fn sub(self, span: Millis) -> Self {
        Self { unix_ms: self.unix_ms.saturating_sub(span.ms()) }
    }
}

/// A moment, in the tests: Unix time in milliseconds.
#[cfg(test)]
pub(crate) const fn wall(unix_ms: u64) -> WallTime {
    WallTime::from_unix_ms(unix_ms)
}
