//! Times in which the press stood.

use crate::codec::Encode;
use crate::facts::StopCause;
use serde::{Deserialize, Serialize};

/// A time in which nothing was pulled, in wall milliseconds.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, Encode)]
pub struct Stop {
    /// When it began.
    pub from: u64,
    /// When it ended; none while it lasts.
    pub to: Option<u64>,
    /// Why; none when the run was off the press between its end and being taken up again.
    pub cause: Option<StopCause>,
}

impl Stop {
    /// How much of it lies between two moments, in milliseconds. A stop that lasts reaches to the
    /// later one.
    pub fn within(&self, from: u64, to: u64) -> u64 {
        let end = self.to.unwrap_or(to).min(to);
        end.saturating_sub(self.from.max(from))
    }

    /// Whether it says something about how often presses stop here: breaks are chosen, and a run
    /// off the press is not a press that stops.
    pub fn is_trouble(&self) -> bool {
        self.cause.is_some_and(|cause| cause != StopCause::Break)
    }
}
