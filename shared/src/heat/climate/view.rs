//! Heat stress in the shop: the climate as read by hand, how it feels, and what care it needs.

use super::brief::STALE_AFTER;
use super::heat_index::{HeatIndex, HeatLevel, Water, heat_index};
use super::work_rest::{Assumption, TABLE_HUMIDITY, WorkRest, work_rest};
use crate::heat::ClimateReading;
use crate::shop::Shop;
use crate::time::{Millis, WallTime};

/// What the figures leave out; shown with them.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ClimateCaveat {
    /// Valid for shade and light wind; full sun can add up to 15 °F.
    ShadeAndLightWind,
    /// Radiant heat of dryer and flash is not included.
    RadiantHeat,
    /// Guidance only; local code and qualified people decide.
    GuidanceOnly,
    /// The air is more humid than the rest table assumes: rest longer than it says.
    DamperThanTable,
    /// Air or index is beyond the published tables.
    PastTables,
}

/// A reading with its age and heat index.
#[derive(Clone, Debug, PartialEq)]
pub struct ClimateRow {
    /// The reading.
    pub reading: ClimateReading,
    /// How long ago it was read, cut to a whole minute.
    pub age: Millis,
    /// Whether it is older than two hours and the shop must be read again.
    pub old: bool,
    /// How hot it felt; `None` if the index is not defined for such air.
    pub index: Option<HeatIndex>,
}

/// The latest climate reading and its consequences.
#[derive(Clone, Debug, PartialEq)]
pub struct ClimateView {
    /// The latest reading, if any.
    pub now: Option<ClimateRow>,
    /// Risk level; `None` if there is no heat index.
    pub level: Option<HeatLevel>,
    /// Published advice on drinking at that level.
    pub water: Option<Water>,
    /// Minutes of work and rest per hour, as far as they hold in this air.
    pub work_rest: Option<WorkRest>,
    /// What those minutes assume.
    pub assumptions: &'static [Assumption],
    /// What the figures leave out.
    pub caveats: Vec<ClimateCaveat>,
    /// Earlier readings of the last day, the newest first.
    pub earlier: Vec<ClimateRow>,
}

/// Oldest age shown.
const MAX_AGE_SHOWN: Millis = Millis::from_days(1);

fn row(reading: &ClimateReading, now: WallTime) -> ClimateRow {
    let age = now.since(reading.at);
    ClimateRow {
        age: age.cut_to_minute(),
        old: age > STALE_AFTER,
        index: heat_index(reading.temperature.fahrenheit(), f64::from(reading.humidity)),
        reading: reading.clone(),
    }
}

/// The latest climate reading, how it feels, and the care it needs.
pub fn climate_view(shop: &Shop, now: WallTime) -> ClimateView {
    let mut rows = shop.heat.climate().iter().rev().filter(|reading| !reading.deleted).map(|reading| row(reading, now));
    let last = rows.next();
    let index = last.as_ref().and_then(|row| row.index);
    let level = index.map(HeatIndex::level);
    let work_rest = last.as_ref().and_then(|row| {
        let table = work_rest(row.reading.temperature.fahrenheit())?;
        Some(table.in_air(row.reading.humidity, level))
    });
    let mut caveats = Vec::new();
    if let Some(row) = &last {
        caveats = vec![ClimateCaveat::ShadeAndLightWind, ClimateCaveat::RadiantHeat, ClimateCaveat::GuidanceOnly];
        let damp = row.reading.humidity > TABLE_HUMIDITY;
        let counts = level > Some(HeatLevel::Lower) || work_rest.is_some_and(|table| !table.below_table);
        if damp && counts {
            caveats.push(ClimateCaveat::DamperThanTable);
        }
        if index.is_some_and(|index| index.beyond_table) || work_rest.is_some_and(|table| table.beyond_table) {
            caveats.push(ClimateCaveat::PastTables);
        }
    }
    ClimateView {
        level,
        water: level.map(Water::at),
        work_rest,
        assumptions: &Assumption::ALL,
        caveats,
        earlier: rows.filter(|row| row.age <= MAX_AGE_SHOWN).collect(),
        now: last,
    }
}
