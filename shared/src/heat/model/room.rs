//! A reading of the room.

use crate::codec::Encode;
use crate::ids::Subject;
use crate::units::Temperature;
use serde::{Deserialize, Serialize};

/// A reading of the room by hand.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, Encode)]
pub struct RoomReading {
    /// Which.
    pub id: Subject,
    /// Wall time.
    pub at: u64,
    /// Air temperature in the shade.
    pub temperature: Temperature,
    /// Relative humidity in percent.
    pub humidity: u8,
    /// Who read it, where the crew is named.
    pub by: Option<String>,
    /// Whether it was deleted.
    pub deleted: bool,
}
