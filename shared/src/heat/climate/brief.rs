//! One-line climate summary for the day page.

use super::heat_index::{HeatIndex, HeatLevel, heat_index};
use crate::shop::Shop;

/// How hot the shop felt at the latest reading.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ClimateSummary {
    /// Risk level.
    pub level: HeatLevel,
    /// Heat index.
    pub index: HeatIndex,
    /// Age in whole minutes.
    pub minutes_ago: u64,
    /// Whether it is older than two hours and the shop must be read again.
    pub old: bool,
}

/// A reading older than this many minutes is called old: two hours. Our own.
pub(crate) const STALE_MINUTES: u64 = 120;
/// A reading older than this many minutes no longer describes today: eight hours. Our own.
const MAX_AGE_MINUTES: u64 = 8 * 60;

/// The climate summary. `None` if the level is [`HeatLevel::Lower`] or the reading is older than eight hours.
/// `now` is the Unix time in milliseconds.
pub fn climate_summary(shop: &Shop, now: u64) -> Option<ClimateSummary> {
    let reading = shop.heat.climate().iter().rev().find(|reading| !reading.deleted)?;
    let minutes_ago = now.saturating_sub(reading.at) / 60_000;
    let index = heat_index(reading.temperature.fahrenheit(), f64::from(reading.humidity))?;
    let level = HeatLevel::of(index.fahrenheit);
    let matters = level > HeatLevel::Lower && minutes_ago <= MAX_AGE_MINUTES;
    matters.then_some(ClimateSummary {
        level,
        index,
        minutes_ago,
        old: now.saturating_sub(reading.at) > STALE_MINUTES * 60_000,
    })
}
