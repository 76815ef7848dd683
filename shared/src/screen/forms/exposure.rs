//! The form of an exposure test, and its result while it is being typed.

use super::bath::parse_person;
use super::mesh_sheet::parse_count;
use crate::facts::{
    Coats, Exposure, ExposureMethod, GUIDE_STEPS, LONGEST, LampKind, MAX_LAMP_DISTANCE_IN, MIN_GOAL, MeshCloth,
    MeshCount, MeshSheet, SHORTEST, StencilFact,
};
use crate::form::{
    FormProblem, Problems, TYPED_NOTE, collect, collect_number, collect_optional, parse_required, parse_text,
    trim_number,
};
use crate::ids::Subject;
use crate::screen::exposure::distance::is_point;
use crate::screen::{
    ExposureChoice, NoDistanceLaw, NoTestResult, TestAdvice, from_columns, from_step_guide, time_at_distance,
};
use crate::shop::Shop;
use crate::units::{Length, LengthUnit, Seconds, Units, parse_number, parse_whole};
use serde::{Deserialize, Serialize};

/// How an exposure time is found.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default, Serialize, Deserialize)]
pub enum ExposureMethodKind {
    /// Read from a 21-step guide.
    #[default]
    StepGuide,
    /// Read from an exposure calculator film.
    Columns,
    /// Computed from another distance of a point lamp.
    Distance,
    /// Known from experience.
    Practice,
}

/// The exposure form. Times are in seconds; distances in inches or centimetres, according to the device's
/// units.
#[derive(Clone, Debug, PartialEq, Default, Serialize, Deserialize)]
#[serde(default)]
pub struct ExposureForm {
    /// The emulsion.
    pub emulsion: Option<Subject>,
    /// The lamp.
    pub lamp: Option<Subject>,
    /// Number of threads of the mesh.
    pub mesh: String,
    /// Whether `mesh` is per inch or per centimetre.
    pub per: LengthUnit,
    /// Thread diameter in micrometres, or empty.
    pub thread: String,
    /// Whether the mesh is dyed.
    pub dyed: bool,
    /// Coats on the print side, or empty.
    pub coats_print: String,
    /// Coats on the squeegee side, or empty.
    pub coats_squeegee: String,
    /// How the time is found.
    pub kind: ExposureMethodKind,
    /// Time of the test; the time at the old distance; or, from experience, the time itself.
    pub time: String,
    /// The last solid step; 0 if none stayed solid.
    pub solid: String,
    /// Factor of the best column, such as `0.7`.
    pub factor: String,
    /// The old distance of the lamp.
    pub from: String,
    /// Who found it, or empty.
    pub by: String,
    /// Free notes.
    pub note: String,
}

/// Why there is no result although every field is valid.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ExposureRefused {
    /// The test gives no result.
    Test(NoTestResult),
    /// Nothing can be computed from the distance.
    Distance(NoDistanceLaw),
}

/// The problems of an exposure form.
#[derive(Clone, Debug, PartialEq)]
pub struct ExposureProblems {
    /// Problems by field.
    pub fields: Problems,
    /// Problem of the form as a whole.
    pub refused: Option<ExposureRefused>,
}

/// The result of an exposure form.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ExposureResult {
    /// The exposure time.
    pub time: Seconds,
    /// That time as a multiple of the time typed; `None` for a time known from experience.
    pub factor: Option<f64>,
    /// How it was found.
    pub found: ExposureMethod,
    /// What to do before relying on it; `None` for a time known from experience.
    pub advice: Option<TestAdvice>,
}

impl ExposureForm {
    /// An empty form for the choices made on the exposure page.
    pub fn for_choice(pick: &ExposureChoice, units: Units) -> Self {
        let form = Self { emulsion: pick.emulsion, lamp: pick.lamp, per: units.length, ..Self::default() };
        match pick.cloth {
            Some(cloth) => form.with_cloth(&cloth, pick.coats),
            None => form.with_coats(pick.coats),
        }
    }

    /// The form that computes the time for these choices from a known exposure at another distance.
    pub fn for_other_distance(pick: &ExposureChoice, known: &Exposure, units: Units) -> Self {
        Self {
            kind: ExposureMethodKind::Distance,
            time: trim_number(known.time.seconds()),
            from: known.distance.map(|from| from.text(units)).unwrap_or_default(),
            ..Self::for_choice(pick, units)
        }
    }

    fn with_coats(self, coats: Option<Coats>) -> Self {
        let side = |side: fn(Coats) -> u8| coats.map(|coats| side(coats).to_string()).unwrap_or_default();
        Self { coats_print: side(|coats| coats.print), coats_squeegee: side(|coats| coats.squeegee), ..self }
    }

    fn with_cloth(self, cloth: &MeshCloth, coats: Option<Coats>) -> Self {
        let (count, per) = match cloth.count {
            MeshCount::PerInch(threads) => (threads, LengthUnit::Inches),
            MeshCount::PerCentimetre(threads) => (threads, LengthUnit::Centimetres),
        };
        let thread = cloth.thread_um.map(|um| um.to_string()).unwrap_or_default();
        Self { mesh: count.to_string(), per, thread, dyed: cloth.dyed, ..self }.with_coats(coats)
    }

    /// The form filled in from a known exposure, to correct it.
    pub fn of(exposure: &Exposure, units: Units) -> Self {
        let seconds = |time: Seconds| trim_number(time.seconds());
        let form = Self {
            emulsion: Some(exposure.emulsion),
            lamp: Some(exposure.lamp),
            by: exposure.by.clone().unwrap_or_default(),
            note: exposure.note.clone(),
            ..Self::default()
        }
        .with_cloth(&exposure.cloth, exposure.coats);
        match exposure.found {
            ExposureMethod::StepGuide { test, solid, .. } => {
                Self { time: seconds(test), solid: solid.to_string(), ..form }
            }
            ExposureMethod::Columns { test, percent } => Self {
                kind: ExposureMethodKind::Columns,
                time: seconds(test),
                factor: trim_number(f64::from(percent) / 100.0),
                ..form
            },
            ExposureMethod::Distance { before, from } => {
                Self { kind: ExposureMethodKind::Distance, time: seconds(before), from: from.text(units), ..form }
            }
            ExposureMethod::Practice => {
                Self { kind: ExposureMethodKind::Practice, time: seconds(exposure.time), ..form }
            }
        }
    }

    /// The result so far; `None` while a required field is empty or not valid. `before` as in
    /// [`check`](Self::check).
    ///
    /// # Errors
    /// [`ExposureRefused`] if every field is valid but there is no result.
    pub fn preview(
        &self,
        shop: &Shop,
        before: Option<&Exposure>,
        units: Units,
    ) -> Result<Option<ExposureResult>, ExposureRefused> {
        let mut problems = Problems::new();
        match self.found(shop, before, units, &mut problems) {
            Ok(found) if problems.is_empty() => Ok(found),
            Ok(_) => Ok(None),
            Err(refused) => Err(refused),
        }
    }

    /// The fact that records the exposure. `before` is the exposure being corrected, if any: its lamp
    /// distance and its goal step are kept.
    ///
    /// # Errors
    /// [`ExposureProblems`]; fields `emulsion`, `lamp`, `mesh`, `thread`, `coats_print`,
    /// `coats_squeegee`, `time`, `solid`, `factor`, `from`, `note`.
    pub fn check(&self, shop: &Shop, before: Option<&Exposure>, units: Units) -> Result<StencilFact, ExposureProblems> {
        let mut problems = Problems::new();
        let p = &mut problems;
        let emulsion = collect(p, "emulsion", self.emulsion.ok_or(FormProblem::Missing));
        let lamp = collect(p, "lamp", self.lamp.ok_or(FormProblem::Missing));
        let cloth = self.cloth(p);
        let coats = self.coats(p);
        let note = collect(p, "note", parse_text(&self.note, TYPED_NOTE));
        let (found, refused) = match self.found(shop, before, units, p) {
            Ok(found) => (found, None),
            Err(refused) => (None, Some(refused)),
        };
        match (emulsion, lamp, cloth, note, found) {
            (Some(emulsion), Some(lamp), Some(cloth), Some(note), Some(found)) if problems.is_empty() => {
                Ok(StencilFact::Exposure(Exposure {
                    emulsion,
                    lamp,
                    distance: self.distance(shop, before),
                    cloth,
                    coats,
                    time: found.time,
                    found: found.found,
                    by: parse_person(&self.by),
                    note,
                }))
            }
            _ => Err(ExposureProblems { fields: problems, refused }),
        }
    }

    /// Distance from the lamp to the emulsion; a contact table has none.
    fn distance(&self, shop: &Shop, before: Option<&Exposure>) -> Option<Length> {
        if let Some(before) = before.filter(|before| Some(before.lamp) == self.lamp) {
            return before.distance;
        }
        let lamp = self.lamp.and_then(|id| shop.exposure_log.lamp(id))?;
        lamp.distance.filter(|_| lamp.kind != LampKind::Contact)
    }

    fn cloth(&self, p: &mut Problems) -> Option<MeshCloth> {
        let count = collect(p, "mesh", parse_required(&self.mesh, |text| parse_count(text, self.per)));
        let thread_um = collect_optional(p, "thread", &self.thread, |text| {
            parse_whole(text, 1, u32::from(MeshSheet::MAX_UM)).map(|um| um as u16)
        });
        Some(MeshCloth { count: count?, thread_um, dyed: self.dyed })
    }

    /// If only one side is typed, the other has no coats.
    fn coats(&self, p: &mut Problems) -> Option<Coats> {
        let side = |text: &str| parse_whole(text, 0, u32::from(Coats::MAX)).map(|coats| coats as u8);
        let print = collect_optional(p, "coats_print", &self.coats_print, side);
        let squeegee = collect_optional(p, "coats_squeegee", &self.coats_squeegee, side);
        print.or(squeegee)?;
        Some(Coats { print: print.unwrap_or(0), squeegee: squeegee.unwrap_or(0) })
    }

    fn found(
        &self,
        shop: &Shop,
        before: Option<&Exposure>,
        units: Units,
        p: &mut Problems,
    ) -> Result<Option<ExposureResult>, ExposureRefused> {
        let time = collect(p, "time", parse_required(&self.time, |text| Seconds::parse(text, SHORTEST, LONGEST)));
        let read = match self.kind {
            ExposureMethodKind::Practice => {
                return Ok(time.map(|time| ExposureResult {
                    time,
                    factor: None,
                    found: ExposureMethod::Practice,
                    advice: None,
                }));
            }
            ExposureMethodKind::StepGuide => {
                let solid = collect(
                    p,
                    "solid",
                    parse_required(&self.solid, |text| parse_whole(text, 0, u32::from(GUIDE_STEPS))),
                );
                let (Some(test), Some(solid), goal) = (time, solid.map(|step| step as u8), Self::goal(shop, before))
                else {
                    return Ok(None);
                };
                (from_step_guide(test, solid, goal), ExposureMethod::StepGuide { test, solid, goal })
            }
            ExposureMethodKind::Columns => {
                let factor = collect(p, "factor", parse_required(&self.factor, |text| parse_number(text, 0.05, 1.0)));
                let (Some(test), Some(factor)) = (time, factor) else { return Ok(None) };
                let percent = (factor * 100.0).round() as u8;
                (from_columns(test, percent), ExposureMethod::Columns { test, percent })
            }
            ExposureMethodKind::Distance => return self.moved(shop, before, units, time, p),
        };
        let reading = read.0.map_err(ExposureRefused::Test)?;
        Ok(Some(ExposureResult {
            time: reading.time,
            factor: Some(reading.factor),
            found: read.1,
            advice: Some(reading.advice),
        }))
    }

    fn goal(shop: &Shop, before: Option<&Exposure>) -> u8 {
        match before.map(|before| before.found) {
            Some(ExposureMethod::StepGuide { goal, .. }) => goal,
            _ => shop.exposure_log.goal(),
        }
    }

    fn moved(
        &self,
        shop: &Shop,
        before: Option<&Exposure>,
        units: Units,
        old_time: Option<Seconds>,
        p: &mut Problems,
    ) -> Result<Option<ExposureResult>, ExposureRefused> {
        let from = collect(
            p,
            "from",
            parse_required(&self.from, |text| Length::parse(text, Length::from_inches(MAX_LAMP_DISTANCE_IN), units)),
        );
        let Some(lamp) = self.lamp.and_then(|id| shop.exposure_log.lamp(id)) else { return Ok(None) };
        // Report a lamp without a distance law before any field is typed.
        is_point(lamp.kind).map_err(ExposureRefused::Distance)?;
        let (Some(old_time), Some(from)) = (old_time, from) else { return Ok(None) };
        let to = self.distance(shop, before).unwrap_or(Length::from_micrometres(0));
        let time = time_at_distance(lamp.kind, old_time, from, to).map_err(ExposureRefused::Distance)?;
        if !crate::facts::is_exposure_time(time) {
            return Err(ExposureRefused::Test(NoTestResult::OutOfReach));
        }
        let found = ExposureMethod::Distance { before: old_time, from };
        let factor = Some(time.seconds() / old_time.seconds());
        Ok(Some(ExposureResult { time, factor, found, advice: Some(TestAdvice::TestAgain) }))
    }
}

/// Parses the step of the guide that should stay solid: at least the published minimum of seven.
///
/// # Errors
/// [`Problems`] by field: `goal`.
pub fn check_goal(text: &str) -> Result<StencilFact, Problems> {
    let mut problems = Problems::new();
    let goal = parse_whole(text, u32::from(MIN_GOAL), u32::from(GUIDE_STEPS) - 1);
    collect_number(&mut problems, "goal", goal).map(|step| StencilFact::Goal(step as u8)).ok_or(problems)
}
