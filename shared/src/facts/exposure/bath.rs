//! The stored fields of the reclaim bath and its batches. **Frozen** as [`crate::facts::Fact`] is.

use crate::bounds::is_note;
use crate::codec::Encode;
use crate::facts::MAX_SCREENS;
use crate::units::Seconds;
use serde::{Deserialize, Serialize};

/// How the time of a batch was recorded. **Frozen**: it is stored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum BatchTime {
    /// From going in to coming out, as recorded.
    Elapsed,
    /// Time for the whole batch.
    Whole(Seconds),
    /// Time per screen: the batch's time divided by its screens.
    EachScreen(Seconds),
}

/// Longest time of a batch, in seconds: two days.
pub(crate) const MAX_BATCH_SECONDS: u32 = 2 * 86_400;

impl BatchTime {
    /// Whether every value is within its limits; see [`crate::journal::JournalFact::in_bounds`].
    pub(crate) fn in_bounds(self) -> bool {
        match self {
            Self::Elapsed => true,
            Self::Whole(time) | Self::EachScreen(time) => {
                (1..=MAX_BATCH_SECONDS * 1_000).contains(&time.milliseconds())
            }
        }
    }
}

/// How the shop uses its bath. **Frozen** as [`crate::facts::Fact`] is.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum BathField {
    /// How many screens fit in at once.
    Capacity(Option<u16>),
    /// Recharge when a screen takes this many percent of the time it took in the fresh bath.
    RechargeAt(Option<u16>),
    /// Free notes: dilution, supplier's data sheet, where the gloves are.
    Note(String),
}

impl BathField {
    /// Whether every value is within its limits; see [`crate::journal::JournalFact::in_bounds`].
    pub(crate) fn in_bounds(&self) -> bool {
        match self {
            Self::Capacity(count) => count.is_none_or(|count| (1..=MAX_SCREENS).contains(&count)),
            Self::RechargeAt(percent) => percent.is_none_or(|percent| (101..=1_000).contains(&percent)),
            Self::Note(text) => is_note(text),
        }
    }
}
