//! One-line climate summary for the day page.

use super::heat_index::{HeatIndex, HeatLevel, heat_index};
use crate::shop::Shop;
use crate::time::{Millis, WallTime};

/// How hot the shop felt at the latest reading.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ClimateSummary {
    /// Risk level.
    pub level: HeatLevel,
    /// Heat index.
    pub index: HeatIndex,
    /// How long ago it was read, cut to a whole minute.
    pub age: Millis,
    /// Whether it is older than two hours and the shop must be read again.
    pub old: bool,
}

/// A reading older than this is called old. Our own.
pub(crate) const STALE_AFTER: Millis = Millis::from_hours(2);
/// A reading older than this no longer describes today. Our own.
const MAX_AGE: Millis = Millis::from_hours(8);

/// The climate summary. `None` if the level is [`HeatLevel::Lower`] or the reading is older than eight hours.
pub fn climate_summary(shop: &Shop, now: WallTime) -> Option<ClimateSummary> {
    let reading = shop.heat.climate().iter().rev().find(|reading| !reading.deleted)?;
    let since = now.since(reading.at);
    let age = since.cut_to_minute();
    let index = heat_index(reading.temperature.fahrenheit(), f64::from(reading.humidity))?;
    let level = index.level();
    let matters = level > HeatLevel::Lower && age <= MAX_AGE;
    matters.then_some(ClimateSummary { level, index, age, old: since > STALE_AFTER })
}
