//! How long a dryer took from one setting to the next.

use crate::codec::Encode;
use crate::ids::Subject;
use crate::units::{Seconds, Temperature};
use serde::{Deserialize, Serialize};

/// A dryer on its way from one temperature to another.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default, Serialize, Deserialize, Encode)]
pub struct Settling {
    /// Which dryer, from where, to where; none until that fact has arrived.
    pub way: Option<(Subject, Temperature, Temperature)>,
    /// How long it took; none while it goes on.
    pub took: Option<Seconds>,
    /// Wall time at which it started.
    pub at: u64,
    /// Whether it was told afterwards, and says nothing of where the dryer stands.
    pub by_hand: bool,
    /// Whether it was deleted.
    pub deleted: bool,
}
