//! The room in a line, for the day's screen.

use super::heat_index::{HeatIndex, HeatLevel, heat_index};
use crate::shop::Shop;

/// How hot the room felt when it was read last.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RoomBrief {
    /// How much care that asks for.
    pub level: HeatLevel,
    /// How hot it felt.
    pub index: HeatIndex,
    /// Whole minutes since.
    pub minutes_ago: u64,
    /// Whether it is older than two hours, and the room must be read again.
    pub old: bool,
}

/// A reading older than this is called old: two hours. Our own.
pub(crate) const OLD_MINUTES: u64 = 120;
/// A reading older than this says nothing of today any more: eight hours. Our own.
const FORGOTTEN_MINUTES: u64 = 8 * 60;

/// The room in a line. None while it asks for no care, and when it was not read for eight hours.
pub fn room_brief(shop: &Shop, now: u64) -> Option<RoomBrief> {
    let reading = shop.heat.room().iter().rev().find(|reading| !reading.deleted)?;
    let minutes_ago = now.saturating_sub(reading.at) / 60_000;
    let index = heat_index(reading.temperature.fahrenheit(), f64::from(reading.humidity))?;
    let level = HeatLevel::of(index.fahrenheit);
    let matters = level > HeatLevel::Lower && minutes_ago <= FORGOTTEN_MINUTES;
    matters.then_some(RoomBrief {
        level,
        index,
        minutes_ago,
        old: now.saturating_sub(reading.at) > OLD_MINUTES * 60_000,
    })
}
