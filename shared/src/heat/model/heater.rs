//! Dryers and flash units, and how far their settings are from the print's temperature.

use crate::codec::Encode;
use crate::facts::{HeaterField, HeaterKind, SensorMethod};
use crate::time::WallTime;
use crate::units::{BeltSpeed, Length, Temperature, TemperatureDelta};

/// One measurement of the print's temperature.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Encode)]
pub struct SensorReading {
    /// The unit's setting.
    pub setting: Temperature,
    /// Temperature found on the garment.
    pub found: Temperature,
    /// How it was measured.
    pub method: SensorMethod,
    /// Wall time.
    pub at: WallTime,
}

impl SensorReading {
    /// How much hotter (positive) or cooler (negative) the print is than the setting.
    pub fn offset(&self) -> TemperatureDelta {
        TemperatureDelta::between(self.setting, self.found)
    }

    /// Whether nothing is lost of an earlier reading: this one is at the same setting, and by probe or strip, or both are by
    /// infrared and this is no cooler.
    fn replaces(&self, earlier: &Self) -> bool {
        let is_infrared = |reading: &Self| reading.method == SensorMethod::Infrared;
        let no_cooler = is_infrared(earlier) && self.found >= earlier.found;
        self.setting == earlier.setting && (!is_infrared(self) || no_cooler)
    }
}

/// Number of measurements kept per unit.
const MAX_READINGS: usize = 12;

/// A dryer or flash unit.
#[derive(Clone, Debug, PartialEq, Default, Encode)]
pub struct Heater {
    /// Dryer or flash unit.
    pub kind: HeaterKind,
    /// Name in the shop.
    pub name: String,
    /// Length of belt under heat.
    pub heated_length: Option<Length>,
    /// Slowest belt speed.
    pub slowest: Option<BeltSpeed>,
    /// Fastest belt speed.
    pub fastest: Option<BeltSpeed>,
    /// Free notes.
    pub notes: String,
    /// The last twelve measurements that say something, the latest last.
    pub readings: Vec<SensorReading>,
    /// Wall time of its first fact.
    pub created: WallTime,
    /// Whether any of its fields was ever set: a measurement may arrive before them.
    pub known: bool,
    /// Whether it was deleted.
    pub deleted: bool,
}

impl Heater {
    /// The latest measurement.
    pub fn latest_reading(&self) -> Option<&SensorReading> {
        self.readings.last()
    }

    /// Whether this is a dryer that exists and is not deleted.
    pub fn is_dryer(&self) -> bool {
        self.known && !self.deleted && self.kind == HeaterKind::Dryer
    }

    /// Whether a belt speed is within the unit's range; a missing bound allows any.
    pub fn accepts_speed(&self, speed: BeltSpeed) -> bool {
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

    /// Adds a measurement. If there are too many, one goes that a later one at the same setting has made useless, so that
    /// no number of infrared readings makes one by probe forgotten; else the oldest.
    pub(crate) fn add_reading(&mut self, reading: SensorReading) {
        self.readings.push(reading);
        if self.readings.len() > MAX_READINGS {
            let is_useless =
                |place: &usize| self.readings[place + 1..].iter().any(|later| later.replaces(&self.readings[*place]));
            let useless = (0..self.readings.len()).find(is_useless);
            self.readings.remove(useless.unwrap_or(0));
        }
    }
}
