//! A check that was made.

use crate::codec::Encode;
use crate::facts::{CheckItem, CheckOutcome, Expected};
use crate::time::WallTime;

/// A check that was made.
#[derive(Clone, Debug, PartialEq, Encode)]
pub struct CheckRecord {
    /// The expected value when it was made.
    pub expected: Expected,
    /// Outcome.
    pub outcome: CheckOutcome,
    /// Name of the person who made it, if entered.
    pub by: Option<String>,
    /// Wall time.
    pub at: WallTime,
    /// What was last measured against this expected value, also if the check was taken back, skipped or ticked since.
    pub measured: Option<i64>,
    /// The hottest reading by infrared since then.
    pub infrared: Option<i64>,
}

impl CheckRecord {
    /// The record of a check that is made after an earlier one of the same item.
    ///
    /// A measurement stays known until the next one. A dryer that was timed until it had settled is no longer as hot as it
    /// was measured on its way; one measured at its setting, within the tolerance, shows nothing new on its display.
    pub(crate) fn after(
        earlier: Option<&Self>,
        item: CheckItem,
        expected: Expected,
        outcome: CheckOutcome,
        by: Option<String>,
        at: WallTime,
    ) -> Self {
        let earlier = earlier.filter(|earlier| earlier.expected == expected);
        let (measured, infrared) = earlier.map_or((None, None), |earlier| (earlier.measured, earlier.infrared));
        let is_close = |value: &i64| expected.is_close(item, *value);
        let (measured, infrared) = match outcome {
            CheckOutcome::Measured(value) => (Some(value), None),
            CheckOutcome::ReadByInfrared(value) => (measured, infrared.max(Some(value))),
            CheckOutcome::Settled => (measured.filter(is_close), infrared.filter(is_close)),
            CheckOutcome::Ticked | CheckOutcome::Skipped | CheckOutcome::Cleared => (measured, infrared),
        };
        Self { expected, outcome, by, at, measured, infrared }
    }
}
