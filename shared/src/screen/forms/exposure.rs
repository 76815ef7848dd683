//! A test of an exposure as it is typed in, and what it says while it is typed.

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

/// In which way an exposure is found.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub enum FoundKind {
    /// A 21-step guide is read.
    #[default]
    StepGuide,
    /// A calculator film is read.
    Columns,
    /// It is computed from another distance of a point lamp.
    Distance,
    /// The shop knows it.
    Practice,
}

/// The exposure form. Times in seconds; distances in inches or centimetres as the device is set.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct ExposureForm {
    /// Which emulsion.
    pub emulsion: Option<Subject>,
    /// Which lamp.
    pub lamp: Option<Subject>,
    /// Threads of the mesh.
    pub mesh: String,
    /// An inch, or a centimetre.
    pub per: Units,
    /// Thread in micrometres, or empty.
    pub thread: String,
    /// Whether the mesh is dyed.
    pub dyed: bool,
    /// Coats on the print side, or empty.
    pub coats_print: String,
    /// Coats on the squeegee side, or empty.
    pub coats_squeegee: String,
    /// In which way it is found.
    pub kind: FoundKind,
    /// The test's time; at the old distance, the old time; from practice, the time itself.
    pub time: String,
    /// The last solid step; nought when none held.
    pub solid: String,
    /// The best column's factor, `0.7`.
    pub factor: String,
    /// The old distance of the lamp.
    pub from: String,
    /// Who found it, or empty.
    pub by: String,
    /// Anything else to know.
    pub note: String,
}

/// Why nothing follows from what was read, though every field can be read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ExposureRefused {
    /// The test says nothing.
    Test(NoReading),
    /// Nothing can be computed from the distance.
    Distance(NoDistanceLaw),
}

/// What is wrong with an exposure form.
#[derive(Clone, Debug, PartialEq)]
pub struct ExposureProblems {
    /// By field.
    pub fields: Problems,
    /// And as a whole.
    pub refused: Option<ExposureRefused>,
}

/// What the test says.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FoundTime {
    /// How long to expose.
    pub time: Seconds,
    /// How many times the time that was typed; none for what the shop knows.
    pub factor: Option<f64>,
    /// How it was found.
    pub found: Found,
    /// What to do before it is trusted; none for what the shop knows.
    pub advice: Option<TestAdvice>,
}

impl ExposureForm {
    /// The form of a test for what is picked.
    pub fn for_pick(pick: &ExposurePick, units: Units) -> Self {
        let form = Self { emulsion: pick.emulsion, lamp: pick.lamp, per: units, ..Self::default() };
        match pick.cloth {
            Some(cloth) => form.with_cloth(&cloth, pick.coats),
            None => form.with_coats(pick.coats),
        }
    }

    /// The form that computes the time of what is picked from that of an exposure at another distance.
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

    /// The form of an exposure as it was found, to correct it.
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

    /// What the test says so far: none while something it needs is not typed yet. `before` as in
    /// [`check`](Self::check).
    ///
    /// # Errors
    /// [`ExposureRefused`] when all is typed and nothing follows from it.
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

    /// The exposure that was found, or what is wrong. `before` is the one that is corrected, if any:
    /// its lamp hung where it hung then, and the guide was read for the goal of then.
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

    /// From the lamp to the emulsion; a contact table has no distance.
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

    /// One side told and the other empty: the other has none.
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
        // Nothing need be typed to learn that nothing follows from it.
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

/// Reads the step of the guide that the shop aims at: at least the published minimum of seven.
///
/// # Errors
/// [`Problems`] by field: `goal`.
pub fn check_goal(text: &str) -> Result<StencilFact, Problems> {
    let mut problems = Problems::new();
    let goal = parse_whole(text, u32::from(LEAST_GOAL), u32::from(GUIDE_STEPS) - 1);
    keep_number(&mut problems, "goal", goal).map(|step| StencilFact::Goal(step as u8)).ok_or(problems)
}
