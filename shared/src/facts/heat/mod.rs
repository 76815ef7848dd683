//! What can happen to heat in the shop. **Frozen** as [`crate::facts::Fact`] is.

use super::Fabric;
use crate::bounds::{LIST, is_name, is_note};
use crate::codec::Encode;
use crate::ids::Subject;
use crate::units::{BeltSpeed, Length, Seconds, Temperature, TemperatureDelta};
use serde::{Deserialize, Serialize};

mod cure_test;
mod heater;
mod sheet;
mod trial;

pub use cure_test::{Grade, HeatSettings, TestField, TestKind, TestMethod, TestResult};
pub use heater::{HeaterField, HeaterKind, SensorMethod};
pub use sheet::{SheetField, SheetFigures};
pub use trial::{TrialField, TrialVerdict};

/// A fact about dryers, flash units, ink sheets, fabric limits, cure tests, trials or the shop's climate.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum HeatFact {
    /// Temperature and humidity of the shop were read; the subject is the reading.
    RoomRead {
        /// Air temperature in the shade.
        temperature: Temperature,
        /// Relative humidity in percent.
        humidity: u8,
        /// Name of the person who read it, if entered.
        by: Option<String>,
    },
    /// Fields of a dryer or flash unit were set, which creates it the first time; the subject is the unit.
    HeaterSet(Vec<HeaterField>),
    /// The print's temperature was measured against the unit's setting; the subject is the unit.
    SensorRead {
        /// The unit's setting.
        setting: Temperature,
        /// Temperature found on the garment by probe or strip.
        found: Temperature,
        /// How it was measured.
        method: SensorMethod,
    },
    /// The unit's last measurement was removed.
    SensorUnread,
    /// A dryer was chosen for a run, or with `None` the choice was removed; the subject is the run.
    DryerChosen(Option<Subject>),
    /// Fields of an ink's sheet were set; the subject is the sheet.
    SheetSet(Vec<SheetField>),
    /// The shop set its own limit of a fabric, or with `None` went back to the default.
    FabricLimit {
        /// The fabric.
        fabric: Fabric,
        /// Kind of limit.
        kind: LimitKind,
        /// Temperature at which the limit counts as exceeded.
        temperature: Option<Temperature>,
        /// Reason, or the sheet it is from.
        note: String,
    },
    /// A dryer was set to another temperature and is settling; the subject is this settling.
    SettlingStarted {
        /// The dryer.
        dryer: Subject,
        /// Starting temperature.
        from: Temperature,
        /// Target temperature.
        to: Temperature,
    },
    /// The settling finished; this is how long it took.
    SettlingFinished(Seconds),
    /// Fields of a test were set; the subject is the test.
    TestSet(Vec<TestField>),
    /// Fields of a trial were set; the subject is the trial.
    TrialSet(Vec<TrialField>),
    /// A settling that was not timed in the app was entered afterwards. It says nothing about the dryer's
    /// current temperature. The subject is this settling.
    SettlingLogged {
        /// The dryer.
        dryer: Subject,
        /// Starting temperature.
        from: Temperature,
        /// Final temperature.
        to: Temperature,
        /// How long it took.
        took: Seconds,
    },
}

/// Longest settling, dwell or flash accepted, in milliseconds: four hours.
const MAX_TIME: u32 = 4 * 3_600_000;
/// Longest heated length accepted, in micrometres: 30 m.
const MAX_LENGTH: i32 = 30_000_000;

/// Whether a temperature can occur in a shop: −40 to 600 °C.
pub(crate) fn is_shop_temperature(temperature: Temperature) -> bool {
    (-40_000..=600_000).contains(&temperature.milli_celsius())
}

/// Whether a difference can occur between two such temperatures.
pub(crate) fn is_shop_temperature_change(change: TemperatureDelta) -> bool {
    change.milli_celsius().saturating_abs() <= 640_000
}

/// Whether a time can be set on a machine: up to four hours.
pub(crate) fn is_machine_time(time: Seconds) -> bool {
    time.milliseconds() <= MAX_TIME
}

/// Whether a length can be a machine's: 0 to 30 m.
pub(crate) fn is_machine_length(length: Length) -> bool {
    (0..=MAX_LENGTH).contains(&length.micrometres())
}

/// Whether a belt speed is possible: above 0, up to 1 m/s.
pub(crate) fn is_belt_speed(speed: BeltSpeed) -> bool {
    (1..=1_000_000).contains(&speed.micrometres_per_second())
}

impl HeatFact {
    /// Whether every value is within its limits; see [`crate::journal::JournalFact::in_bounds`].
    pub(crate) fn in_bounds(&self) -> bool {
        match self {
            Self::RoomRead { temperature, humidity, by } => {
                is_shop_temperature(*temperature) && *humidity <= 100 && by.iter().all(|text| is_name(text))
            }
            Self::HeaterSet(fields) => fields.len() <= LIST && fields.iter().all(HeaterField::in_bounds),
            Self::SensorRead { setting, found, .. } => is_shop_temperature(*setting) && is_shop_temperature(*found),
            Self::SensorUnread | Self::DryerChosen(_) => true,
            Self::SheetSet(fields) => fields.len() <= LIST && fields.iter().all(SheetField::in_bounds),
            Self::FabricLimit { temperature, note, .. } => temperature.is_none_or(is_shop_temperature) && is_note(note),
            Self::SettlingStarted { from, to, .. } => is_shop_temperature(*from) && is_shop_temperature(*to),
            Self::SettlingFinished(time) => is_machine_time(*time),
            Self::SettlingLogged { from, to, took, .. } => {
                is_shop_temperature(*from) && is_shop_temperature(*to) && is_machine_time(*took)
            }
            Self::TestSet(fields) => fields.len() <= LIST && fields.iter().all(TestField::in_bounds),
            Self::TrialSet(fields) => fields.len() <= LIST && fields.iter().all(TrialField::in_bounds),
        }
    }
}

/// Kind of damage a limit protects from. **Frozen**: names and order are stored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case")]
pub enum LimitKind {
    /// The fabric's dye migrates into the print, which may show only days later.
    DyeMigration,
    /// The fabric scorches, glazes or shrinks.
    Scorch,
}
