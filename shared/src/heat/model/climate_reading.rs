//! A climate reading: temperature and humidity at the press.

use crate::codec::Encode;
use crate::ids::Subject;
use crate::time::WallTime;
use crate::units::Temperature;

/// A climate reading taken by hand.
#[derive(Clone, Debug, PartialEq, Eq, Encode)]
pub struct ClimateReading {
    /// Id of the reading.
    pub id: Subject,
    /// Wall time.
    pub at: WallTime,
    /// Air temperature in the shade.
    pub temperature: Temperature,
    /// Relative humidity in percent.
    pub humidity: u8,
    /// Name of the person who read it, if entered.
    pub by: Option<String>,
    /// Whether it was deleted.
    pub deleted: bool,
}
