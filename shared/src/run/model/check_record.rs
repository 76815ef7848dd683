//! A check that was made.

use crate::codec::Encode;
use crate::facts::{CheckOutcome, Expected};
use serde::{Deserialize, Serialize};

/// A check that was made.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Encode)]
pub struct CheckRecord {
    /// What was expected then.
    pub expected: Expected,
    /// What came of it.
    pub outcome: CheckOutcome,
    /// Who, where the crew is named.
    pub by: Option<String>,
    /// Wall time.
    pub at: u64,
}
