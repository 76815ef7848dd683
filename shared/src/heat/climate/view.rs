//! The heat of the room: what was read by hand, how it feels, and what it asks for.

use super::brief::OLD_MINUTES;
use super::heat_index::{HeatIndex, HeatLevel, Water, heat_index};
use super::work_rest::{Assumption, WorkRest, work_rest};
use crate::heat::RoomReading;
use crate::shop::Shop;

/// What the numbers leave out; shown with them.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RoomCaveat {
    /// For shade and light wind; full sun can add up to 15 °F.
    ShadeAndLightWind,
    /// Radiant heat of dryer and flash is not counted.
    RadiantHeat,
    /// Guidance; local code and somebody who knows decide.
    GuidanceOnly,
    /// The air is damper than the rest table takes for granted: rest more than it says.
    DamperThanTable,
    /// The air or the index lies past the published tables.
    PastTables,
}

/// A reading with its age.
#[derive(Clone, Debug, PartialEq)]
pub struct RoomRow {
    /// The reading.
    pub reading: RoomReading,
    /// Whole minutes since.
    pub minutes_ago: u64,
    /// Whether it is older than two hours, and the room must be read again.
    pub old: bool,
    /// How hot it felt; none where no index is given for such air.
    pub index: Option<HeatIndex>,
}

/// The room as it was read last.
#[derive(Clone, Debug, PartialEq)]
pub struct RoomView {
    /// The last reading; none when there is none.
    pub now: Option<RoomRow>,
    /// How much care it asks for; none where there is no index.
    pub level: Option<HeatLevel>,
    /// What is published on drinking at that level.
    pub water: Option<Water>,
    /// Minutes of work and rest.
    pub work_rest: Option<WorkRest>,
    /// What those minutes take for granted.
    pub assumptions: &'static [Assumption],
    /// What the numbers leave out.
    pub caveats: Vec<RoomCaveat>,
    /// Readings before, the newest first, of the last day.
    pub earlier: Vec<RoomRow>,
}

/// Readings further back are not shown.
const DAY_MINUTES: u64 = 24 * 60;

fn row(reading: &RoomReading, now: u64) -> RoomRow {
    let age = now.saturating_sub(reading.at);
    RoomRow {
        minutes_ago: age / 60_000,
        old: age > OLD_MINUTES * 60_000,
        index: heat_index(reading.temperature.fahrenheit(), f64::from(reading.humidity)),
        reading: reading.clone(),
    }
}

/// The room as it was read last, how it feels, and what that asks for.
pub fn room_view(shop: &Shop, now: u64) -> RoomView {
    let mut rows = shop.heat.room().iter().rev().filter(|reading| !reading.deleted).map(|reading| row(reading, now));
    let last = rows.next();
    let index = last.as_ref().and_then(|row| row.index);
    let level = index.map(|index| HeatLevel::of(index.fahrenheit));
    let work_rest = last.as_ref().and_then(|row| work_rest(row.reading.temperature.fahrenheit()));
    let mut caveats = Vec::new();
    if let Some(row) = &last {
        caveats = vec![RoomCaveat::ShadeAndLightWind, RoomCaveat::RadiantHeat, RoomCaveat::GuidanceOnly];
        if row.reading.humidity > 30 && work_rest.is_some_and(|table| !table.below_table) {
            caveats.push(RoomCaveat::DamperThanTable);
        }
        if index.is_some_and(|index| index.beyond_table) || work_rest.is_some_and(|table| table.beyond_table) {
            caveats.push(RoomCaveat::PastTables);
        }
    }
    RoomView {
        level,
        water: level.map(Water::at),
        work_rest,
        assumptions: &Assumption::ALL,
        caveats,
        earlier: rows.filter(|row| row.minutes_ago <= DAY_MINUTES).collect(),
        now: last,
    }
}
