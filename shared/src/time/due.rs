//! When a job is due.

use super::{Day, TimeOfDay};
use crate::codec::Encode;
use serde::{Deserialize, Serialize};

/// A day and a time of day in the shop's local time.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, Encode)]
#[serde(deny_unknown_fields)]
pub struct Due {
    /// The day.
    pub day: Day,
    /// The time of that day. One from a file may be later than 23:59.
    #[serde(rename = "minutes")]
    pub time: TimeOfDay,
}
