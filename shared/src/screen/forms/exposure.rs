//! The form of an exposure test, and its result while it is being typed.

use super::bath::somebody;
use super::mesh_sheet::parse_count;
use crate::facts::{
    Coats, Exposure, FURTHEST, Found, GUIDE_STEPS, LEAST_GOAL, LONGEST, LampKind, MeshCloth, MeshCount, MeshSheet,
    SHORTEST, StencilFact,
};
use crate::form::{FormProblem, Problems, keep, keep_number, keep_optional, name, required, shown};
use crate::ids::Subject;
use crate::screen::exposure::distance::is_point;
use crate::screen::{
    ExposurePick, NoDistanceLaw, NoReading, TestAdvice, from_columns, from_step_guide, time_at_distance,
};
use crate::shop::Shop;
use crate::units::{Length, Seconds, Units, parse_number, parse_whole};

/// How an exposure time is found.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub enum FoundKind {
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
#[derive(Clone, Debug, PartialEq, Default)]
pub struct ExposureForm {
    /// The emulsion.
    pub emulsion: Option<Subject>,
    /// The lamp.
    pub lamp: Option<Subject>,
    /// Number of threads of the mesh.
    pub mesh: String,
    /// Whether `mesh` is per inch or per centimetre.
    pub per: Units,
    /// Thread diameter in micrometres, or empty.
    pub thread: String,
    /// Whether the mesh is dyed.
    pub dyed: bool,
    /// Coats on the print side, or empty.
    pub coats_print: String,
    /// Coats on the squeegee side, or empty.
    pub coats_squeegee: String,
    /// How the time is found.
    pub kind: FoundKind,
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
    Test(NoReading),
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
pub struct FoundTime {
    /// The exposure time.
    pub time: Seconds,
    /// That time as a multiple of the time typed; `None` for a time known from experience.
    pub factor: Option<f64>,
    /// How it was found.
    pub found: Found,
    /// What to do before relying on it; `None` for a time known from experience.
    pub advice: Option<TestAdvice>,
}

impl ExposureForm {
    /// An empty form for the choices made on the exposure page.
    pub fn for_pick(pick: &ExposurePick, units: Units) -> Self {
        let form = Self { emulsion: pick.emulsion, lamp: pick.lamp, per: units, ..Self::default() };
        match pick.cloth {
            Some(cloth) => form.with_cloth(&cloth, pick.coats),
            None => form.with_coats(pick.coats),
        }
    }

    /// The form that computes the time for these choices from a known exposure at another distance.
    pub fn from_distance(pick: &ExposurePick, known: &Exposure, units: Units) -> Self {
        Self {
            kind: FoundKind::Distance,
            time: shown(known.time.seconds()),
            from: known.distance.map(|from| shown(from.in_units(units))).unwrap_or_default(),
            ..Self::for_pick(pick, units)
        }
    }

    fn with_coats(self, coats: Option<Coats>) -> Self {
        let side = |side: fn(Coats) -> u8| coats.map(|coats| side(coats).to_string()).unwrap_or_default();
        Self { coats_print: side(|coats| coats.print), coats_squeegee: side(|coats| coats.squeegee), ..self }
    }

    fn with_cloth(self, cloth: &MeshCloth, coats: Option<Coats>) -> Self {
        let (count, per) = match cloth.count {
            MeshCount::PerInch(threads) => (threads, Units::UsCustomary),
            MeshCount::PerCentimetre(threads) => (threads, Units::Metric),
        };
        let thread = cloth.thread_um.map(|um| um.to_string()).unwrap_or_default();
        Self { mesh: count.to_string(), per, thread, dyed: cloth.dyed, ..self }.with_coats(coats)
    }

    /// The form filled in from a known exposure, to correct it.
    pub fn of(exposure: &Exposure, units: Units) -> Self {
        let seconds = |time: Seconds| shown(time.seconds());
        let form = Self {
            emulsion: Some(exposure.emulsion),
            lamp: Some(exposure.lamp),
            by: exposure.by.clone().unwrap_or_default(),
            note: exposure.note.clone(),
            ..Self::default()
        }
        .with_cloth(&exposure.cloth, exposure.coats);
        match exposure.found {
            Found::StepGuide { test, solid, .. } => Self { time: seconds(test), solid: solid.to_string(), ..form },
            Found::Columns { test, percent } => Self {
                kind: FoundKind::Columns,
                time: seconds(test),
                factor: shown(f64::from(percent) / 100.0),
                ..form
            },
            Found::Distance { before, from } => {
                Self { kind: FoundKind::Distance, time: seconds(before), from: shown(from.in_units(units)), ..form }
            }
            Found::Practice => Self { kind: FoundKind::Practice, time: seconds(exposure.time), ..form },
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
    ) -> Result<Option<FoundTime>, ExposureRefused> {
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
        let emulsion = keep(p, "emulsion", self.emulsion.ok_or(FormProblem::Missing));
        let lamp = keep(p, "lamp", self.lamp.ok_or(FormProblem::Missing));
        let cloth = self.cloth(p);
        let coats = self.coats(p);
        let note = keep(p, "note", name(&self.note, 2_000));
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
                    by: somebody(&self.by),
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
        let lamp = self.lamp.and_then(|id| shop.stencils.lamp(id))?;
        lamp.distance.filter(|_| lamp.kind != LampKind::Contact)
    }

    fn cloth(&self, p: &mut Problems) -> Option<MeshCloth> {
        let count = keep(p, "mesh", required(&self.mesh, |text| parse_count(text, self.per)));
        let thread_um = keep_optional(p, "thread", &self.thread, |text| {
            parse_whole(text, 1, u32::from(MeshSheet::MOST_UM)).map(|um| um as u16)
        });
        Some(MeshCloth { count: count?, thread_um, dyed: self.dyed })
    }

    /// If only one side is typed, the other has no coats.
    fn coats(&self, p: &mut Problems) -> Option<Coats> {
        let side = |text: &str| parse_whole(text, 0, u32::from(Coats::MOST)).map(|coats| coats as u8);
        let print = keep_optional(p, "coats_print", &self.coats_print, side);
        let squeegee = keep_optional(p, "coats_squeegee", &self.coats_squeegee, side);
        print.or(squeegee)?;
        Some(Coats { print: print.unwrap_or(0), squeegee: squeegee.unwrap_or(0) })
    }

    fn found(
        &self,
        shop: &Shop,
        before: Option<&Exposure>,
        units: Units,
        p: &mut Problems,
    ) -> Result<Option<FoundTime>, ExposureRefused> {
        let time = keep(p, "time", required(&self.time, |text| Seconds::parse(text, SHORTEST, LONGEST)));
        let read = match self.kind {
            FoundKind::Practice => {
                return Ok(time.map(|time| FoundTime { time, factor: None, found: Found::Practice, advice: None }));
            }
            FoundKind::StepGuide => {
                let solid =
                    keep(p, "solid", required(&self.solid, |text| parse_whole(text, 0, u32::from(GUIDE_STEPS))));
                let (Some(test), Some(solid), goal) = (time, solid.map(|step| step as u8), Self::goal(shop, before))
                else {
                    return Ok(None);
                };
                (from_step_guide(test, solid, goal), Found::StepGuide { test, solid, goal })
            }
            FoundKind::Columns => {
                let factor = keep(p, "factor", required(&self.factor, |text| parse_number(text, 0.05, 1.0)));
                let (Some(test), Some(factor)) = (time, factor) else { return Ok(None) };
                let percent = (factor * 100.0).round() as u8;
                (from_columns(test, percent), Found::Columns { test, percent })
            }
            FoundKind::Distance => return self.moved(shop, before, units, time, p),
        };
        let reading = read.0.map_err(ExposureRefused::Test)?;
        Ok(Some(FoundTime {
            time: reading.time,
            factor: Some(reading.factor),
            found: read.1,
            advice: Some(reading.advice),
        }))
    }

    fn goal(shop: &Shop, before: Option<&Exposure>) -> u8 {
        match before.map(|before| before.found) {
            Some(Found::StepGuide { goal, .. }) => goal,
            _ => shop.stencils.goal(),
        }
    }

    fn moved(
        &self,
        shop: &Shop,
        before: Option<&Exposure>,
        units: Units,
        old_time: Option<Seconds>,
        p: &mut Problems,
    ) -> Result<Option<FoundTime>, ExposureRefused> {
        let from =
            keep(p, "from", required(&self.from, |text| Length::parse(text, Length::from_inches(FURTHEST), units)));
        let Some(lamp) = self.lamp.and_then(|id| shop.stencils.lamp(id)) else { return Ok(None) };
        // Report a lamp without a distance law before any field is typed.
        is_point(lamp.kind).map_err(ExposureRefused::Distance)?;
        let (Some(old_time), Some(from)) = (old_time, from) else { return Ok(None) };
        let to = self.distance(shop, before).unwrap_or(Length::from_micrometres(0));
        let time = time_at_distance(lamp.kind, old_time, from, to).map_err(ExposureRefused::Distance)?;
        if !crate::facts::is_exposure(time) {
            return Err(ExposureRefused::Test(NoReading::OutOfReach));
        }
        let found = Found::Distance { before: old_time, from };
        let factor = Some(time.seconds() / old_time.seconds());
        Ok(Some(FoundTime { time, factor, found, advice: Some(TestAdvice::TestAgain) }))
    }
}

/// Parses the step of the guide that should stay solid: at least the published minimum of seven.
///
/// # Errors
/// [`Problems`] by field: `goal`.
pub fn check_goal(text: &str) -> Result<StencilFact, Problems> {
    let mut problems = Problems::new();
    let goal = parse_whole(text, u32::from(LEAST_GOAL), u32::from(GUIDE_STEPS) - 1);
    keep_number(&mut problems, "goal", goal).map(|step| StencilFact::Goal(step as u8)).ok_or(problems)
}
