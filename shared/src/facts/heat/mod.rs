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

/// Something about dryers, flash units, inks' limits, tests of a cure, or the room.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum HeatFact {
    /// The room was read; the subject is the reading.
    RoomRead {
        /// Air temperature in the shade.
        temperature: Temperature,
        /// Relative humidity in percent.
        humidity: u8,
        /// Who read it, where the crew is named.
        by: Option<String>,
    },
    /// Fields of a dryer or flash unit were set; it comes to be with the first. The subject is the unit.
    HeaterSet(Vec<HeaterField>),
    /// What reaches the print was measured against the unit's setting; the subject is the unit.
    SensorRead {
        /// What the unit was set to.
        setting: Temperature,
        /// What the probe or strip on a garment found.
        found: Temperature,
        /// With what.
        method: SensorMethod,
    },
    /// The last measurement of the unit was taken back.
    SensorUnread,
    /// The run goes through this dryer; the subject is the run. None: the shop's usual one.
    DryerChosen(Option<Subject>),
    /// Fields of an ink's sheet were set; the subject is the sheet.
    SheetSet(Vec<SheetField>),
    /// The shop's own limit of a fabric, or none to go back to the cautious default.
    FabricLimit {
        /// Which fabric.
        fabric: Fabric,
        /// Which limit.
        kind: LimitKind,
        /// From here on it is passed.
        temperature: Option<Temperature>,
        /// Why, or from which sheet.
        note: String,
    },
    /// A dryer was set to another temperature and is on its way; the subject is this settling.
    SettlingStarted {
        /// Which dryer.
        dryer: Subject,
        /// Where it stood.
        from: Temperature,
        /// Where it goes.
        to: Temperature,
    },
    /// It has settled: so long after it started.
    SettlingFinished(Seconds),
    /// Fields of a test were set; the subject is the test.
    TestSet(Vec<TestField>),
    /// Fields of a trial were set; the subject is the trial.
    TrialSet(Vec<TrialField>),
    /// A settling that was not timed with the app: told afterwards, it says nothing of where the dryer
    /// stands now. The subject is this settling.
    SettlingLogged {
        /// Which dryer.
        dryer: Subject,
        /// Where it stood.
        from: Temperature,
        /// Where it went.
        to: Temperature,
        /// How long it took.
        took: Seconds,
    },
}

/// Longest settling, dwell or flash that is believed: four hours.
const LONGEST: u32 = 4 * 3_600_000;
/// Longest heated length that is believed: 30 m.
const FURTHEST: i32 = 30_000_000;

/// Whether a temperature is one a shop can meet: −40 to 600 °C.
pub(crate) fn is_met(temperature: Temperature) -> bool {
    (-40_000..=600_000).contains(&temperature.milli_celsius())
}

/// Whether a difference is one of two such temperatures.
pub(crate) fn is_reachable(change: TemperatureDelta) -> bool {
    change.milli_celsius().saturating_abs() <= 640_000
}

/// Whether a time is one a machine is set to.
pub(crate) fn is_set(time: Seconds) -> bool {
    time.milliseconds() <= LONGEST
}

/// Whether a length is one of a machine.
pub(crate) fn is_built(length: Length) -> bool {
    (0..=FURTHEST).contains(&length.micrometres())
}

/// Whether a belt moves, and no faster than one can.
pub(crate) fn is_belt(speed: BeltSpeed) -> bool {
    (1..=1_000_000).contains(&speed.micrometres_a_second())
}

impl HeatFact {
    /// As [`super::Fact::in_bounds`].
    pub(crate) fn in_bounds(&self) -> bool {
        match self {
            Self::RoomRead { temperature, humidity, by } => {
                is_met(*temperature) && *humidity <= 100 && by.iter().all(|text| is_name(text))
            }
            Self::HeaterSet(fields) => fields.len() <= LIST && fields.iter().all(HeaterField::in_bounds),
            Self::SensorRead { setting, found, .. } => is_met(*setting) && is_met(*found),
            Self::SensorUnread | Self::DryerChosen(_) => true,
            Self::SheetSet(fields) => fields.len() <= LIST && fields.iter().all(SheetField::in_bounds),
            Self::FabricLimit { temperature, note, .. } => temperature.is_none_or(is_met) && is_note(note),
            Self::SettlingStarted { from, to, .. } => is_met(*from) && is_met(*to),
            Self::SettlingFinished(time) => is_set(*time),
            Self::SettlingLogged { from, to, took, .. } => is_met(*from) && is_met(*to) && is_set(*took),
            Self::TestSet(fields) => fields.len() <= LIST && fields.iter().all(TestField::in_bounds),
            Self::TrialSet(fields) => fields.len() <= LIST && fields.iter().all(TrialField::in_bounds),
        }
    }
}

/// What too much heat does to a fabric. **Frozen** names and order: they are stored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case")]
pub enum LimitKind {
    /// The fabric's dye moves into the print. It may show only days later.
    DyeMigration,
    /// The fabric scorches, glazes or shrinks.
    Scorch,
}
