//! Form for an ink trial.

use super::typed::{
    belt_text, collect_belt, collect_flash, collect_seconds, collect_temperature, seconds_text, temperature_text,
};
use crate::facts::{Fabric, TrialField, TrialVerdict};
use crate::form::{
    Problems, TYPED_NAME, TYPED_NOTE, collect, collect_number, collect_optional, parse_required_name, parse_text,
    trim_number,
};
use crate::heat::Trial;
use crate::run::Run;
use crate::shop::Shop;
use crate::units::{LengthUnit, Units, parse_number, parse_whole};
use serde::{Deserialize, Serialize};

/// The form of a trial. Numbers are typed in the device's units.
#[derive(Clone, Debug, PartialEq, Default, Serialize, Deserialize)]
#[serde(default)]
pub struct TrialForm {
    /// The ink's name.
    pub ink: String,
    /// The fabric.
    pub fabric: Fabric,
    /// Mesh count in threads per inch, or per centimetre.
    pub mesh: String,
    /// Number of strokes that print ink.
    pub hits: String,
    /// Flash time in seconds, or empty for none.
    pub flash: String,
    /// Dryer temperature.
    pub dryer: String,
    /// Belt speed in feet or centimetres per minute.
    pub belt: String,
    /// Dwell in seconds.
    pub dwell: String,
    /// Passes through the dryer.
    pub passes: String,
    /// Outcome, in the shop's words.
    pub outcome: String,
    /// The shop's verdict.
    pub verdict: TrialVerdict,
    /// Notes.
    pub notes: String,
    /// Name of the person who ran the trial, or empty.
    pub by: String,
}

/// Centimetres per inch: mesh is stored in threads per inch.
const CM_PER_INCH: f64 = 2.54;

fn mesh_text(mesh: Option<u16>, units: Units) -> String {
    let threads = |mesh: u16| match units.length {
        LengthUnit::Inches => f64::from(mesh),
        LengthUnit::Centimetres => (f64::from(mesh) / CM_PER_INCH).round(),
    };
    mesh.map(|mesh| trim_number(threads(mesh))).unwrap_or_default()
}

impl TrialForm {
    /// The form filled with a trial's current values.
    pub fn of(trial: &Trial, units: Units) -> Self {
        Self {
            ink: trial.ink.clone(),
            fabric: trial.fabric,
            mesh: mesh_text(trial.mesh, units),
            hits: trial.hits.max(1).to_string(),
            flash: seconds_text(trial.flash.map(|flash| flash.seconds)),
            dryer: temperature_text(trial.dryer, units),
            belt: belt_text(trial.belt, units),
            dwell: seconds_text(trial.dwell),
            passes: trial.passes.max(1).to_string(),
            outcome: trial.outcome.clone(),
            verdict: trial.verdict,
            notes: trial.notes.clone(),
            by: trial.by.clone().unwrap_or_default(),
        }
    }

    /// A form for a new trial, filled with a run's set-up.
    pub fn from_run(shop: &Shop, run: &Run, units: Units) -> Self {
        let set_up = &run.set_up;
        let trial = Trial {
            ink: run.ink.clone(),
            fabric: run.lot.and_then(|lot| shop.lot(lot)).map(|lot| lot.fabric).unwrap_or_default(),
            mesh: set_up.mesh,
            hits: set_up.hits,
            flash: set_up.flash,
            dryer: set_up.dryer,
            belt: set_up.belt,
            dwell: set_up.dwell,
            passes: set_up.passes,
            ..Trial::default()
        };
        Self::of(&trial, units)
    }

    /// The fields that change the trial `before`, or all fields for a new trial.
    ///
    /// # Errors
    /// [`Problems`] by field: `ink`, `mesh`, `hits`, `flash`, `dryer`, `belt`, `dwell`, `passes`, `outcome`,
    /// `notes`, `by`.
    pub fn check(&self, units: Units, before: Option<&Trial>) -> Result<Vec<TrialField>, Problems> {
        let mut problems = Problems::new();
        let p = &mut problems;
        let ink = collect(p, "ink", parse_required_name(&self.ink));
        let mesh = collect_optional(p, "mesh", &self.mesh, |text| match units.length {
            LengthUnit::Inches => parse_number(text, 10.0, 610.0),
            LengthUnit::Centimetres => parse_number(text, 4.0, 240.0).map(|threads| threads * CM_PER_INCH),
        });
        let hits = collect_number(p, "hits", parse_whole(&self.hits, 1, 20));
        let flash = collect_flash(p, "flash", &self.flash, before.and_then(|trial| trial.flash));
        let dryer = collect_temperature(p, "dryer", &self.dryer, units);
        let belt = collect_belt(p, "belt", &self.belt, units);
        let dwell = collect_seconds(p, "dwell", &self.dwell, 1.0);
        let passes = collect_number(p, "passes", parse_whole(&self.passes, 1, 9));
        let outcome = collect(p, "outcome", parse_text(&self.outcome, TYPED_NOTE));
        let notes = collect(p, "notes", parse_text(&self.notes, TYPED_NOTE));
        let by = collect(p, "by", parse_text(&self.by, TYPED_NAME));
        let (Some(ink), Some(hits), Some(passes), Some(outcome), Some(notes), Some(by), true) =
            (ink, hits, passes, outcome, notes, by, problems.is_empty())
        else {
            return Err(problems);
        };
        let was = before.map(|trial| Self::of(trial, units));
        let differs = |here: &dyn Fn(&Self) -> &String| was.as_ref().is_none_or(|was| here(was) != here(self));
        let verdict_changed = was.as_ref().is_none_or(|was| was.verdict != self.verdict);
        Ok([
            (differs(&|form| &form.ink), TrialField::Ink(ink)),
            (was.as_ref().is_none_or(|was| was.fabric != self.fabric), TrialField::Fabric(self.fabric)),
            (differs(&|form| &form.mesh), TrialField::Mesh(mesh.map(|mesh| mesh.round() as u16))),
            (differs(&|form| &form.hits), TrialField::Hits(hits as u8)),
            (differs(&|form| &form.flash), TrialField::Flash(flash)),
            (differs(&|form| &form.dryer), TrialField::Dryer(dryer)),
            (differs(&|form| &form.belt), TrialField::Belt(belt)),
            (differs(&|form| &form.dwell), TrialField::Dwell(dwell)),
            (differs(&|form| &form.passes), TrialField::Passes(passes as u8)),
            (differs(&|form| &form.outcome), TrialField::Outcome(outcome)),
            (verdict_changed, TrialField::Verdict(self.verdict)),
            (differs(&|form| &form.notes), TrialField::Notes(notes)),
            (differs(&|form| &form.by), TrialField::By((!by.is_empty()).then_some(by))),
        ]
        .into_iter()
        .filter(|(changed, _)| *changed)
        .map(|(_, field)| field)
        .collect())
    }
}
