//! Dryers and flash units, and how far their settings lie from what reaches the print.

use crate::codec::Encode;
use crate::facts::{HeaterField, HeaterKind, SensorMethod};
use crate::units::{BeltSpeed, Length, Temperature, TemperatureDelta};
use serde::{Deserialize, Serialize};

/// One measurement of what reaches the print.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, Encode)]
pub struct SensorReading {
    /// What the unit was set to.
    pub setting: Temperature,
    /// What was found on the garment.
    pub found: Temperature,
    /// With what.
    pub method: SensorMethod,
    /// Wall time.
    pub at: u64,
}

impl SensorReading {
    /// How much hotter (positive) or cooler (negative) the print is than the setting.
    pub fn offset(&self) -> TemperatureDelta {
        TemperatureDelta::between(self.setting, self.found)
    }
}

/// Measurements of a unit that are kept.
const READINGS: usize = 12;

/// A dryer or flash unit.
#[derive(Clone, Debug, PartialEq, Default, Serialize, Deserialize, Encode)]
pub struct Heater {
    /// Dryer or flash unit.
    pub kind: HeaterKind,
    /// What the shop calls it.
    pub name: String,
    /// Length of belt that is under heat.
    pub heated_length: Option<Length>,
    /// Slowest its belt runs.
    pub slowest: Option<BeltSpeed>,
    /// Fastest its belt runs.
    pub fastest: Option<BeltSpeed>,
    /// Anything else to know.
    pub notes: String,
    /// Measurements, the latest last; the last few only.
    pub readings: Vec<SensorReading>,
    /// Wall time of its first fact.
    pub created: u64,
    /// Whether its fields were ever told: a measurement may have arrived before them.
    pub known: bool,
    /// Whether it was deleted.
    pub deleted: bool,
}

impl Heater {
    /// The latest measurement.
    pub fn reading(&self) -> Option<&SensorReading> {
        self.readings.last()
    }

    /// Whether it is a dryer the shop has.
    pub fn is_dryer(&self) -> bool {
        self.known && !self.deleted && self.kind == HeaterKind::Dryer
    }

    /// Whether a belt speed lies inside what it runs, as far as that is known.
    pub fn runs_at(&self, speed: BeltSpeed) -> bool {
        self.slowest.is_none_or(|slowest| speed >= slowest) && self.fastest.is_none_or(|fastest| speed <= fastest)
    }

    pub(crate) fn set(&mut self, field: &HeaterField) {
        self.known = true;
        match field {
            HeaterField::Kind(kind) => self.kind = *kind,
            HeaterField::Name(name) => self.name.clone_from(name),
            HeaterField::HeatedLength(length) => self.heated_length = *length,
            HeaterField::Slowest(speed) => self.slowest = *speed,
            HeaterField::Fastest(speed) => self.fastest = *speed,
            HeaterField::Notes(notes) => self.notes.clone_from(notes),
        }
    }

    pub(crate) fn read(&mut self, reading: SensorReading) {
        if self.readings.len() == READINGS {
            self.readings.remove(0);
        }
        self.readings.push(reading);
    }
}
