//! How long a dryer took from one setting to the next.

use crate::codec::Encode;
use crate::ids::Subject;
use crate::time::WallTime;
use crate::units::{Seconds, Temperature};

/// A dryer's change from one temperature to another.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Encode)]
pub struct Transition {
    /// The dryer.
    pub dryer: Subject,
    /// Starting temperature.
    pub from: Temperature,
    /// Final temperature.
    pub to: Temperature,
}

/// A dryer settling from one temperature to another.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default, Encode)]
pub struct Settling {
    /// From what to what; `None` until that fact has arrived.
    pub transition: Option<Transition>,
    /// Duration; `None` while in progress, zero if it was left out when the settling ended.
    pub took: Option<Seconds>,
    /// When it started.
    pub at: WallTime,
    /// Whether it was entered afterwards; it then says nothing about the dryer's current temperature.
    pub entered_afterwards: bool,
    /// Whether it was deleted.
    pub deleted: bool,
}
