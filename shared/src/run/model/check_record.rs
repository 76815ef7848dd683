//! A check that was made.

use crate::codec::Encode;
use crate::facts::{CheckOutcome, Expected};
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
}
