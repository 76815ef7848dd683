//! The shop's own limit of a fabric.

use crate::codec::Encode;
use crate::units::Temperature;
use serde::{Deserialize, Serialize};

/// The shop's own limit of a fabric.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, Encode)]
pub struct OwnLimit {
    /// From here on it is passed.
    pub temperature: Temperature,
    /// Why, or from which sheet.
    pub note: String,
}
