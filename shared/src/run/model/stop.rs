//! Stops of the press.

use crate::codec::Encode;
use crate::facts::StopCause;

/// A time without pulls, in Unix milliseconds.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Encode)]
pub struct Stop {
    /// Unix time in milliseconds at which it began.
    pub from: u64,
    /// Unix time in milliseconds at which it ended; `None` while it lasts.
    pub to: Option<u64>,
    /// Cause; `None` if the run was off the press between its end and being reopened.
    pub cause: Option<StopCause>,
}

impl Stop {
    /// Milliseconds of the stop between two Unix times. A stop that still lasts reaches to `to`.
    ///
    /// ```
    /// use lastpull_core::run::{Stop, StopCause};
    ///
    /// let stop = Stop { from: 85_000, to: Some(685_000), cause: Some(StopCause::Screen) };
    /// assert_eq!(stop.overlap(80_000, 100_000), 15_000);
    /// assert_eq!(Stop { to: None, ..stop }.overlap(80_000, 100_000), 15_000);
    /// assert_eq!(stop.overlap(700_000, 800_000), 0);
    /// ```
    pub fn overlap(&self, from: u64, to: u64) -> u64 {
        let end = self.to.unwrap_or(to).min(to);
        end.saturating_sub(self.from.max(from))
    }

    /// Whether it counts towards the shop's stop rate. Breaks are chosen, and a run off the press is not a
    /// stopped press.
    pub fn is_trouble(&self) -> bool {
        self.cause.is_some_and(|cause| cause != StopCause::Break)
    }
}
