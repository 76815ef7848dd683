//! What the room's humidity means for an emulsion.

use crate::heat::climate_view;
use crate::ids::Subject;
use crate::screen::{HumidityEffect, humidity_effect};
use crate::shop::Shop;
use crate::time::WallTime;

/// The room's humidity, and what it means for an emulsion.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct RoomHumidity {
    /// What the humidity means.
    pub note: HumidityEffect,
    /// Relative humidity in percent, from the latest reading; `None` if that reading is old.
    pub humidity: Option<u8>,
}

/// The humidity at wall time `now` and what it means for an emulsion; `None` if the emulsion is not known.
/// A reading that the climate page shows as old is ignored.
pub fn room_humidity(shop: &Shop, emulsion: Subject, now: WallTime) -> Option<RoomHumidity> {
    let family = shop.exposure_log.emulsion(emulsion)?.family;
    let reading = climate_view(shop, now).now.filter(|row| !row.old);
    let humidity = reading.map(|row| row.reading.humidity);
    Some(RoomHumidity { note: humidity_effect(family, humidity), humidity })
}
