//! Stops of the press.

use crate::codec::Encode;
use crate::facts::StopCause;
use crate::time::{Millis, WallTime};

/// A time without pulls.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Encode)]
pub struct Stop {
    /// When it began.
    pub from: WallTime,
    /// When it ended; `None` while it lasts.
    pub to: Option<WallTime>,
    /// Cause; `None` if the run was off the press between its end and being reopened.
    pub cause: Option<StopCause>,
}

impl Stop {
    /// The part of the stop between two moments. A stop that still lasts reaches to `to`.
    ///
    /// ```
    /// use lastpull_core::run::{Stop, StopCause};
    /// use lastpull_core::time::{Millis, WallTime};
    ///
    /// let at = |seconds: u64| WallTime::from_unix_ms(seconds * 1_000);
    /// let stop = Stop { from: at(85), to: Some(at(685)), cause: Some(StopCause::Screen) };
    /// assert_eq!(stop.overlap(at(80), at(100)), Millis::from_ms(15_000));
    /// assert_eq!(Stop { to: None, ..stop }.overlap(at(80), at(100)), Millis::from_ms(15_000));
    /// assert_eq!(stop.overlap(at(700), at(800)), Millis::ZERO);
    /// ```
    pub fn overlap(&self, from: WallTime, to: WallTime) -> Millis {
        let end = self.to.unwrap_or(to).min(to);
        end.since(self.from.max(from))
    }

    /// Whether it counts among the stops to be expected of later runs. Breaks are chosen, and a run off the press is not a
    /// stopped press.
    pub fn is_trouble(&self) -> bool {
        self.cause.is_some_and(|cause| cause != StopCause::Break)
    }
}
