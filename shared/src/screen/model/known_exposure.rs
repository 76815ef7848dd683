//! An exposure that was found: for which emulsion, mesh and lamp, how long, and how it was found.

use crate::codec::Encode;
use crate::facts::Exposure;
use serde::{Deserialize, Serialize};

/// An exposure that the shop knows.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Encode)]
pub struct KnownExposure {
    /// What was found.
    pub fact: Exposure,
    /// Wall time.
    pub at: u64,
    /// Whether it was deleted.
    pub deleted: bool,
}
