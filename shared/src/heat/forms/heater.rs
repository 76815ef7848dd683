//! Forms for dryers and flash units: the unit, its measured error, and a settling entered afterwards.

use super::typed::{belt_text, collect_belt, collect_temperature, length_text};
use crate::facts::{HeatFact, HeaterField, HeaterKind, SensorMethod};
use crate::form::{
    FormProblem, Problems, TYPED_NOTE, collect, collect_number, collect_optional, parse_required_name, parse_text,
};
use crate::heat::{Heater, plausible_times};
use crate::ids::Subject;
use crate::units::{Length, NumberProblem, Seconds, Temperature, TemperatureDelta, Units, parse_number};
use serde::{Deserialize, Serialize};

/// The form of a dryer or flash unit. Numbers are typed in the device's units.
#[derive(Clone, Debug, PartialEq, Default, Serialize, Deserialize)]
#[serde(default)]
pub struct HeaterForm {
    /// Dryer or flash unit.
    pub kind: HeaterKind,
    /// Name in the shop.
    pub name: String,
    /// Heated length in inches or centimetres; dryers only.
    pub heated_length: String,
    /// Slowest belt speed in feet or centimetres per minute; dryers only.
    pub slowest: String,
    /// Fastest belt speed in the same unit; dryers only.
    pub fastest: String,
    /// Notes.
    pub notes: String,
}

/// Longest heated length accepted, in inches.
const MAX_HEATED_LENGTH_IN: f64 = 480.0;

impl HeaterForm {
    /// The form filled with a unit's current values.
    pub fn of(heater: &Heater, units: Units) -> Self {
        Self {
            kind: heater.kind,
            name: heater.name.clone(),
            heated_length: length_text(heater.heated_length, units),
            slowest: belt_text(heater.slowest, units),
            fastest: belt_text(heater.fastest, units),
            notes: heater.notes.clone(),
        }
    }

    /// The fields that change the unit `before`, or all fields for a new unit. A number whose text is
    /// unchanged produces no field.
    ///
    /// # Errors
    /// [`Problems`] by field: `name`, `heated_length`, `slowest`, `fastest`, `notes`.
    pub fn check(&self, units: Units, before: Option<&Heater>) -> Result<Vec<HeaterField>, Problems> {
        let mut problems = Problems::new();
        let p = &mut problems;
        let called = collect(p, "name", parse_required_name(&self.name));
        let notes = collect(p, "notes", parse_text(&self.notes, TYPED_NOTE));
        let (mut heated, mut slowest, mut fastest) = (None, None, None);
        if self.kind == HeaterKind::Dryer {
            let most = Length::from_inches(MAX_HEATED_LENGTH_IN);
            heated = collect_optional(p, "heated_length", &self.heated_length, |text| Length::parse(text, most, units));
            if heated.is_some_and(|length| length.micrometres() == 0) {
                p.insert("heated_length", FormProblem::Missing);
            }
            slowest = collect_belt(p, "slowest", &self.slowest, units);
            fastest = collect_belt(p, "fastest", &self.fastest, units);
            if slowest.zip(fastest).is_some_and(|(slowest, fastest)| fastest < slowest) {
                p.insert("fastest", FormProblem::OutOfOrder);
            }
        }
        let (Some(called), Some(notes), true) = (called, notes, problems.is_empty()) else {
            return Err(problems);
        };
        let was = before.map(|heater| Self::of(heater, units));
        let differs = |here: &dyn Fn(&Self) -> String| was.as_ref().is_none_or(|was| here(was) != here(self));
        let kind_changed = was.as_ref().is_none_or(|was| was.kind != self.kind);
        Ok([
            (kind_changed, HeaterField::Kind(self.kind)),
            (differs(&|form| form.name.trim().into()), HeaterField::Name(called)),
            (kind_changed || differs(&|form| form.heated_length.clone()), HeaterField::HeatedLength(heated)),
            (kind_changed || differs(&|form| form.slowest.clone()), HeaterField::Slowest(slowest)),
            (kind_changed || differs(&|form| form.fastest.clone()), HeaterField::Fastest(fastest)),
            (differs(&|form| form.notes.trim().into()), HeaterField::Notes(notes)),
        ]
        .into_iter()
        .filter(|(changed, _)| *changed)
        .map(|(_, field)| field)
        .collect())
    }
}

/// The form of a measurement with probe or strip. Temperatures are typed in the device's units.
#[derive(Clone, Debug, PartialEq, Default, Serialize, Deserialize)]
#[serde(default)]
pub struct SensorForm {
    /// The unit's setting.
    pub setting: String,
    /// Temperature found on the garment.
    pub found: String,
    /// How it was measured.
    pub method: SensorMethod,
}

impl SensorForm {
    /// The fact of the measurement. Its subject is the unit.
    ///
    /// # Errors
    /// [`Problems`] by field: `setting`, `found`.
    pub fn check(&self, units: Units) -> Result<HeatFact, Problems> {
        let mut problems = Problems::new();
        let read = |text: &str| Temperature::parse_dryer(text, units);
        let setting = collect_number(&mut problems, "setting", read(&self.setting));
        let found = collect_number(&mut problems, "found", read(&self.found));
        let (Some(setting), Some(found)) = (setting, found) else { return Err(problems) };
        Ok(HeatFact::SensorRead { setting, found, method: self.method })
    }
}

/// The form of a settling that was not timed in the app. Temperatures are typed in the device's units.
#[derive(Clone, Debug, PartialEq, Default, Serialize, Deserialize)]
#[serde(default)]
pub struct SettlingForm {
    /// Starting temperature.
    pub from: String,
    /// Final temperature.
    pub to: String,
    /// Duration in minutes.
    pub minutes: String,
}

impl SettlingForm {
    /// The fact of the settling. Its subject must be a new id.
    ///
    /// # Errors
    /// [`Problems`] by field: `from`, `to`, `minutes`.
    pub fn check(&self, dryer: Subject, units: Units) -> Result<HeatFact, Problems> {
        let mut problems = Problems::new();
        let p = &mut problems;
        for (field, text) in [("from", &self.from), ("to", &self.to), ("minutes", &self.minutes)] {
            if text.trim().is_empty() {
                p.insert(field, FormProblem::Missing);
            }
        }
        let from = collect_temperature(p, "from", &self.from, units);
        let to = collect_temperature(p, "to", &self.to, units);
        let minutes = collect_optional(p, "minutes", &self.minutes, |text| parse_number(text, 0.5, 240.0));
        if from.is_some() && from == to {
            p.insert("to", FormProblem::OutOfOrder);
        }
        let (Some(from), Some(to), Some(minutes), true) = (from, to, minutes, problems.is_empty()) else {
            return Err(problems);
        };
        let took = Seconds::new(minutes * 60.0);
        if let Some(times) = plausible_times(TemperatureDelta::between(from, to)) {
            // In whole minutes within the plausible times, but never more than can be typed.
            let (least, most) = ((times.start() / 60.0).ceil(), (times.end() / 60.0).floor().clamp(1.0, 240.0));
            let problem = match took.seconds() {
                short if short < *times.start() => Some(NumberProblem::TooLow { least }),
                long if long > *times.end() => Some(NumberProblem::TooHigh { most }),
                _ => None,
            };
            if let Some(problem) = problem {
                problems.insert("minutes", FormProblem::Number(problem));
                return Err(problems);
            }
        }
        Ok(HeatFact::SettlingLogged { dryer, from, to, took })
    }
}
