//! The shop's own limit of a fabric.

use crate::codec::Encode;
use crate::units::Temperature;

/// The shop's own limit of a fabric.
#[derive(Clone, Debug, PartialEq, Eq, Encode)]
pub struct OwnLimit {
    /// Temperature at which it counts as exceeded.
    pub temperature: Temperature,
    /// Reason, or the sheet it is from.
    pub note: String,
}
