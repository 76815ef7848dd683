//! A known exposure: its emulsion, mesh and lamp, its time, and how the time was found.

use crate::codec::Encode;
use crate::facts::Exposure;
use crate::time::WallTime;

/// An exposure in the shop's list.
#[derive(Clone, Debug, PartialEq, Encode)]
pub struct KnownExposure {
    /// What was recorded.
    pub fact: Exposure,
    /// When it was first recorded, as wall time.
    pub at: WallTime,
    /// Whether it was deleted.
    pub deleted: bool,
}
