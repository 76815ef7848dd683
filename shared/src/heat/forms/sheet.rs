//! Forms for an ink's data sheet and for the shop's own limit of a fabric.

use super::typed::{collect_seconds, collect_temperature, seconds_text, temperature_text};
use crate::facts::{Fabric, HeatFact, LimitKind, SheetField};
use crate::form::{FormProblem, Problems, TYPED_NOTE, collect, parse_required_name, parse_text};
use crate::heat::{FabricLimit, InkSheet, LimitOrigin};
use crate::time::Day;
use crate::units::Units;

/// The form of an ink sheet. Temperatures are typed in the device's units.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct SheetForm {
    /// The ink's name as used in runs.
    pub ink: String,
    /// Cure temperature of the ink.
    pub cure: String,
    /// Hold time in seconds; 0 if the sheet asks for none.
    pub hold: String,
    /// Flash temperature.
    pub flash: String,
    /// Maximum temperature of the ink.
    pub highest: String,
    /// Title or number of the sheet.
    pub source: String,
    /// Its date as `2026-11-25`, or empty.
    pub source_day: String,
}

impl SheetForm {
    /// The form filled with a sheet's current values.
    pub fn of(sheet: &InkSheet, units: Units) -> Self {
        Self {
            ink: sheet.ink.clone(),
            cure: temperature_text(sheet.figures.cure, units),
            hold: seconds_text(sheet.figures.hold),
            flash: temperature_text(sheet.figures.flash, units),
            highest: temperature_text(sheet.figures.highest, units),
            source: sheet.source.clone(),
            source_day: sheet.source_day.map(|day| day.to_string()).unwrap_or_default(),
        }
    }

    /// The fields that change the sheet `before`, or all fields for a new sheet.
    ///
    /// # Errors
    /// [`Problems`] by field: `ink`, `cure`, `hold`, `flash`, `highest`, `source`, `source_day`.
    pub fn check(&self, units: Units, before: Option<&InkSheet>) -> Result<Vec<SheetField>, Problems> {
        let mut problems = Problems::new();
        let p = &mut problems;
        let ink = collect(p, "ink", parse_required_name(&self.ink));
        let source = collect(p, "source", parse_text(&self.source, TYPED_NOTE));
        let cure = collect_temperature(p, "cure", &self.cure, units);
        let hold = collect_seconds(p, "hold", &self.hold, 0.0);
        let flash = collect_temperature(p, "flash", &self.flash, units);
        let highest = collect_temperature(p, "highest", &self.highest, units);
        if cure.zip(highest).is_some_and(|(cure, highest)| highest < cure) {
            p.insert("highest", FormProblem::OutOfOrder);
        }
        let day = self.source_day.trim();
        let source_day = if day.is_empty() {
            None
        } else {
            collect(p, "source_day", Day::from_iso(day).ok_or(FormProblem::NotADay))
        };
        let (Some(ink), Some(source), true) = (ink, source, problems.is_empty()) else { return Err(problems) };
        let was = before.map(|sheet| Self::of(sheet, units));
        let differs = |here: &dyn Fn(&Self) -> &String| was.as_ref().is_none_or(|was| here(was) != here(self));
        Ok([
            (differs(&|form| &form.ink), SheetField::Ink(ink)),
            (differs(&|form| &form.cure), SheetField::Cure(cure)),
            (differs(&|form| &form.hold), SheetField::Hold(hold)),
            (differs(&|form| &form.flash), SheetField::Flash(flash)),
            (differs(&|form| &form.highest), SheetField::Highest(highest)),
            (differs(&|form| &form.source), SheetField::Source(source)),
            (differs(&|form| &form.source_day), SheetField::SourceDay(source_day)),
        ]
        .into_iter()
        .filter(|(changed, _)| *changed)
        .map(|(_, field)| field)
        .collect())
    }
}

/// The form of the shop's own limit of a fabric.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct FabricLimitForm {
    /// Temperature of the print at which the limit counts as exceeded; empty for the default.
    pub temperature: String,
    /// Reason, or the sheet it is from; required with a temperature.
    pub note: String,
}

impl FabricLimitForm {
    /// The form filled with the current limit; empty if that is the default.
    pub fn of(limit: Option<&FabricLimit>, units: Units) -> Self {
        match limit.filter(|limit| limit.origin == LimitOrigin::Shop) {
            Some(limit) => {
                Self { temperature: temperature_text(Some(limit.temperature), units), note: limit.note.clone() }
            }
            None => Self::default(),
        }
    }

    /// The fact of the limit.
    ///
    /// # Errors
    /// [`Problems`] by field: `temperature`, `note`.
    pub fn check(&self, fabric: Fabric, kind: LimitKind, units: Units) -> Result<HeatFact, Problems> {
        let mut problems = Problems::new();
        let temperature = collect_temperature(&mut problems, "temperature", &self.temperature, units);
        let note = collect(&mut problems, "note", parse_text(&self.note, TYPED_NOTE));
        if temperature.is_some() && self.note.trim().is_empty() {
            problems.insert("note", FormProblem::Missing);
        }
        let (Some(note), true) = (note, problems.is_empty()) else { return Err(problems) };
        Ok(HeatFact::FabricLimit { fabric, kind, temperature, note })
    }
}
