//! What is typed into the job, lot and run forms, checked and turned into facts.
//!
//! A form holds the text as typed. Nothing is lost by a mistake: [`check`](JobForm::check) answers
//! with a problem for each field that has one, and the form stays as it is.

use super::{Job, Lot};
use crate::collections::Map;
use crate::colour::Colour;
use crate::facts::{Fabric, Flash, JobField, Location, LotField, RunField, Size, SizePieces};
use crate::form::{
    FormProblem, NAME, NOTE, Problems, changed, keep, keep_number, keep_optional, name, required_name, shown,
};
use crate::run::Run;
use crate::time::{Day, Due};
use crate::units::{BeltSpeed, Length, NumberProblem, Seconds, Temperature, Units, parse_number, parse_whole};

/// The job form.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct JobForm {
    /// Client.
    pub client: String,
    /// Title.
    pub title: String,
    /// Due day, `2026-11-25`, or empty.
    pub due_day: String,
    /// Due time, `16:30`, or empty for closing.
    pub due_time: String,
    /// Notes.
    pub notes: String,
    /// Tax exempt.
    pub exempt: bool,
}

impl JobForm {
    /// The form of a job as it stands.
    pub fn of(job: &Job) -> Self {
        Self {
            client: job.client.clone(),
            title: job.title.clone(),
            due_day: job.due.map(|due| due.day.to_string()).unwrap_or_default(),
            due_time: job.due.map(|due| format!("{:02}:{:02}", due.minutes / 60, due.minutes % 60)).unwrap_or_default(),
            notes: job.notes.clone(),
            exempt: job.exempt,
        }
    }

    /// The fields that change a job, or what is wrong. `before` is the job edited, if any; `closing`
    /// is when the shop closes on a day, which an empty time stands for.
    ///
    /// # Errors
    /// [`Problems`] by field: `client`, `title`, `due_day`, `due_time`, `notes`.
    pub fn check(
        &self,
        today: Day,
        before: Option<&Job>,
        closing: impl Fn(Day) -> Option<u16>,
    ) -> Result<Vec<JobField>, Problems> {
        let mut problems = Problems::new();
        let client = keep(&mut problems, "client", required_name(&self.client));
        let title = keep(&mut problems, "title", required_name(&self.title));
        let notes = keep(&mut problems, "notes", name(&self.notes, NOTE));
        let due = self.due(today, before.and_then(|job| job.due), closing, &mut problems);
        let (Some(client), Some(title), Some(notes), true) = (client, title, notes, problems.is_empty()) else {
            return Err(problems);
        };
        let fields = |client, title, due, notes, exempt| {
            vec![
                JobField::Client(client),
                JobField::Title(title),
                JobField::Due(due),
                JobField::Notes(notes),
                JobField::Exempt(exempt),
            ]
        };
        let now = fields(client, title, due, notes, self.exempt);
        Ok(match before {
            Some(job) => {
                changed(now, &fields(job.client.clone(), job.title.clone(), job.due, job.notes.clone(), job.exempt))
            }
            None => now,
        })
    }

    fn due(
        &self,
        today: Day,
        before: Option<Due>,
        closing: impl Fn(Day) -> Option<u16>,
        problems: &mut Problems,
    ) -> Option<Due> {
        if self.due_day.trim().is_empty() {
            if !self.due_time.trim().is_empty() {
                problems.insert("due_day", FormProblem::Missing);
            }
            return None;
        }
        let day = keep(problems, "due_day", Day::from_iso(self.due_day.trim()).ok_or(FormProblem::NotADay))?;
        let minutes = if self.due_time.trim().is_empty() {
            closing(day).unwrap_or(17 * 60)
        } else {
            keep(problems, "due_time", minutes_of(&self.due_time).ok_or(FormProblem::NotATime))?
        };
        let due = Due { day, minutes };
        if day < today && before != Some(due) {
            problems.insert("due_day", FormProblem::Past);
        }
        Some(due)
    }
}

/// Minutes after midnight of `16:30`.
fn minutes_of(text: &str) -> Option<u16> {
    let (hours, minutes) = text.trim().split_once(':')?;
    let hours = parse_whole(hours, 0, 23).ok()?;
    let minutes = parse_whole(minutes.get(..2)?, 0, 59).ok()?;
    Some((hours * 60 + minutes) as u16)
}

/// The lot form.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct LotForm {
    /// Garment.
    pub garment: String,
    /// Fabric.
    pub fabric: Fabric,
    /// Colour, `#rrggbb`.
    pub colour: String,
    /// What the colour is called.
    pub colour_name: String,
    /// Pieces of each size, as typed.
    pub pieces: Map<Size, String>,
}

impl LotForm {
    /// The form of a lot as it stands.
    pub fn of(lot: &Lot) -> Self {
        Self {
            garment: lot.garment.clone(),
            fabric: lot.fabric,
            colour: lot.colour.map(|colour| colour.to_string()).unwrap_or_default(),
            colour_name: lot.colour_name.clone(),
            pieces: lot.pieces.iter().map(|(size, pieces)| (*size, pieces.to_string())).collect(),
        }
    }

    /// The fields that change a lot, or what is wrong.
    ///
    /// # Errors
    /// [`Problems`] by field: `garment`, `colour_name`, `pieces`, and each size by its label.
    pub fn check(&self, before: Option<&Lot>) -> Result<Vec<LotField>, Problems> {
        let mut problems = Problems::new();
        let garment = keep(&mut problems, "garment", required_name(&self.garment));
        let colour_name = keep(&mut problems, "colour_name", name(&self.colour_name, NAME));
        let mut pieces = Vec::new();
        for (size, text) in &self.pieces {
            if text.trim().is_empty() {
                continue;
            }
            match parse_whole(text, 0, 100_000) {
                Ok(0) => {}
                Ok(count) => pieces.push(SizePieces { size: *size, pieces: count }),
                Err(problem) => {
                    problems.insert("pieces", FormProblem::Number(problem));
                }
            }
        }
        if pieces.is_empty() {
            problems.or_insert_with("pieces", || FormProblem::NoPieces);
        }
        let (Some(garment), Some(colour_name), true) = (garment, colour_name, problems.is_empty()) else {
            return Err(problems);
        };
        let mut fields = vec![
            LotField::Garment(garment),
            LotField::Fabric(self.fabric),
            LotField::ColourName(colour_name),
            LotField::Pieces(pieces),
        ];
        fields.extend(Colour::from_hex(&self.colour).map(LotField::Colour));
        Ok(match before {
            Some(lot) => {
                let mut standing = vec![
                    LotField::Garment(lot.garment.clone()),
                    LotField::Fabric(lot.fabric),
                    LotField::ColourName(lot.colour_name.clone()),
                    LotField::Pieces(lot.pieces.iter().map(|(&size, &pieces)| SizePieces { size, pieces }).collect()),
                ];
                standing.extend(lot.colour.map(LotField::Colour));
                changed(fields, &standing)
            }
            None => fields,
        })
    }
}

/// The run form. Numbers are in the units of the device.
#[derive(Clone, Debug, PartialEq)]
pub struct RunForm {
    /// Where.
    pub location: Location,
    /// Ink name.
    pub ink: String,
    /// Ink colour, `#rrggbb`.
    pub ink_colour: String,
    /// Screens.
    pub screens: String,
    /// Mesh: threads an inch, or a centimetre.
    pub mesh: String,
    /// Whether there is a flash.
    pub flash: bool,
    /// Its seconds.
    pub flash_seconds: String,
    /// Its distance: inches, or centimetres.
    pub flash_distance: String,
    /// Hits.
    pub hits: String,
    /// Dryer temperature.
    pub dryer: String,
    /// Belt speed: inches or centimetres a minute.
    pub belt: String,
    /// Dwell in seconds.
    pub dwell: String,
    /// Passes.
    pub passes: String,
    /// Squeegee.
    pub squeegee: String,
    /// Off-contact: inches, or millimetres.
    pub off_contact: String,
    /// Below the collar: inches, or centimetres.
    pub below_collar: String,
    /// Placement in words.
    pub placement: String,
    /// Guess of a piece's seconds.
    pub guess: String,
}

/// Furthest below a collar a print can start.
const LOWEST_PRINT: f64 = 30.0;

impl RunForm {
    /// The form of a run as it stands, in the units of the device.
    pub fn of(run: &Run, units: Units) -> Self {
        let set_up = &run.set_up;
        let length = |length: Option<Length>| length.map(|l| shown(l.in_units(units))).unwrap_or_default();
        let seconds = |seconds: Option<Seconds>| seconds.map(|s| shown(s.seconds())).unwrap_or_default();
        Self {
            location: run.location,
            ink: run.ink.clone(),
            ink_colour: run.ink_colour.map(|colour| colour.to_string()).unwrap_or_default(),
            screens: set_up.screens.clone(),
            mesh: set_up.mesh.map(|mesh| shown(mesh_in_units(mesh, units).round())).unwrap_or_default(),
            flash: set_up.flash.is_some(),
            flash_seconds: seconds(set_up.flash.map(|flash| flash.seconds)),
            flash_distance: length(set_up.flash.and_then(|flash| flash.distance)),
            hits: set_up.hits.to_string(),
            dryer: set_up.dryer.map(|dryer| shown(dryer.in_units(units).round())).unwrap_or_default(),
            belt: set_up.belt.map(|belt| shown(belt.in_units(units))).unwrap_or_default(),
            dwell: seconds(set_up.dwell),
            passes: set_up.passes.to_string(),
            squeegee: set_up.squeegee.clone(),
            off_contact: set_up.off_contact.map(|gap| shown(off_contact_in_units(gap, units))).unwrap_or_default(),
            below_collar: length(set_up.below_collar),
            placement: set_up.placement.clone(),
            guess: seconds(run.guess),
        }
    }

    /// The fields that change a run, or what is wrong.
    ///
    /// # Errors
    /// [`Problems`] by field, each named as the form's.
    pub fn check(&self, units: Units, before: Option<&Run>) -> Result<Vec<RunField>, Problems> {
        let mut problems = Problems::new();
        let p = &mut problems;
        let ink = keep(p, "ink", required_name(&self.ink));
        let screens = keep(p, "screens", name(&self.screens, NAME));
        let squeegee = keep(p, "squeegee", name(&self.squeegee, NAME));
        let placement = keep(p, "placement", name(&self.placement, NOTE));
        let mesh = keep_optional(p, "mesh", &self.mesh, |text| parse_mesh(text, units));
        let hits = keep_number(p, "hits", parse_whole(&self.hits, 1, 20));
        let passes = keep_number(p, "passes", parse_whole(&self.passes, 1, 9));
        let dryer = keep_optional(p, "dryer", &self.dryer, |text| Temperature::parse_dryer(text, units));
        let belt = keep_optional(p, "belt", &self.belt, |text| BeltSpeed::parse(text, units));
        let dwell = keep_optional(p, "dwell", &self.dwell, |text| Seconds::parse(text, 1.0, 1_800.0));
        let off_contact = keep_optional(p, "off_contact", &self.off_contact, |text| parse_off_contact(text, units));
        let lowest = Length::from_inches(LOWEST_PRINT);
        let below_collar =
            keep_optional(p, "below_collar", &self.below_collar, |text| Length::parse(text, lowest, units));
        let guess = keep_optional(p, "guess", &self.guess, |text| Seconds::parse(text, 2.0, 3_600.0));
        let flash = if self.flash { self.check_flash(units, p) } else { None };
        let (Some(ink), Some(screens), Some(squeegee), Some(placement), Some(hits), Some(passes)) =
            (ink, screens, squeegee, placement, hits, passes)
        else {
            return Err(problems);
        };
        if !problems.is_empty() {
            return Err(problems);
        }
        let mut fields = vec![
            RunField::Location(self.location),
            RunField::Ink(ink),
            RunField::Screens(screens),
            RunField::Mesh(mesh),
            RunField::Flash(flash),
            RunField::Hits(hits as u8),
            RunField::Dryer(dryer),
            RunField::Belt(belt),
            RunField::Dwell(dwell),
            RunField::Passes(passes as u8),
            RunField::Squeegee(squeegee),
            RunField::OffContact(off_contact),
            RunField::BelowCollar(below_collar),
            RunField::Placement(placement),
            RunField::Guess(guess),
        ];
        fields.extend(Colour::from_hex(&self.ink_colour).map(RunField::InkColour));
        Ok(match before {
            Some(run) => self.changed_run(fields, run, units),
            None => fields,
        })
    }

    /// What changed, as the person sees it: a number whose text they left alone is left alone too,
    /// even where the device's units show it rounded.
    fn changed_run(&self, fields: Vec<RunField>, run: &Run, units: Units) -> Vec<RunField> {
        let mut standing = run.set_up.fields();
        standing.push(RunField::Location(run.location));
        standing.push(RunField::Ink(run.ink.clone()));
        standing.push(RunField::Guess(run.guess));
        standing.extend(run.ink_colour.map(RunField::InkColour));
        let was = Self::of(run, units);
        changed(fields, &standing)
            .into_iter()
            .filter(|field| match field {
                RunField::Mesh(_) => self.mesh != was.mesh,
                RunField::Flash(_) => {
                    (self.flash, &self.flash_seconds, &self.flash_distance)
                        != (was.flash, &was.flash_seconds, &was.flash_distance)
                }
                RunField::Dryer(_) => self.dryer != was.dryer,
                RunField::Belt(_) => self.belt != was.belt,
                RunField::Dwell(_) => self.dwell != was.dwell,
                RunField::OffContact(_) => self.off_contact != was.off_contact,
                RunField::BelowCollar(_) => self.below_collar != was.below_collar,
                _ => true,
            })
            .collect()
    }

    fn check_flash(&self, units: Units, problems: &mut Problems) -> Option<Flash> {
        let seconds = keep_number(problems, "flash_seconds", Seconds::parse(&self.flash_seconds, 0.5, 120.0));
        let furthest = Length::from_inches(40.0);
        let distance = keep_optional(problems, "flash_distance", &self.flash_distance, |text| {
            Length::parse(text, furthest, units)
        });
        Some(Flash { seconds: seconds?, distance })
    }
}

fn mesh_in_units(mesh: u16, units: Units) -> f64 {
    match units {
        Units::UsCustomary => f64::from(mesh),
        Units::Metric => f64::from(mesh) / 2.54,
    }
}

/// Meshes are woven from about 10 to 500 threads an inch.
fn parse_mesh(text: &str, units: Units) -> Result<u16, NumberProblem> {
    match units {
        Units::UsCustomary => parse_whole(text, 10, 500).map(|mesh| mesh as u16),
        Units::Metric => parse_number(text, 4.0, 200.0).map(|mesh| (mesh * 2.54).round() as u16),
    }
}

fn off_contact_in_units(gap: Length, units: Units) -> f64 {
    match units {
        Units::UsCustomary => gap.inches(),
        Units::Metric => gap.millimetres(),
    }
}

fn parse_off_contact(text: &str, units: Units) -> Result<Length, NumberProblem> {
    match units {
        Units::UsCustomary => parse_number(text, 0.0, 1.0).map(Length::from_inches),
        Units::Metric => parse_number(text, 0.0, 25.0).map(Length::from_millimetres),
    }
}

impl Default for RunForm {
    fn default() -> Self {
        Self::of(&Run::default(), Units::UsCustomary)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn today() -> Day {
        Day::from_iso("2026-11-25").unwrap()
    }

    fn job_form() -> JobForm {
        JobForm { client: "Harbour Choir".into(), title: "Tour tees".into(), ..JobForm::default() }
    }

    #[test]
    fn a_job_needs_a_client_and_a_title() {
        let problems = JobForm::default().check(today(), None, |_| None).unwrap_err();
        assert_eq!(problems["client"], FormProblem::Missing);
        assert_eq!(problems["title"], FormProblem::Missing);
    }

    #[test]
    fn due_before_today_is_answered_beside_the_field() {
        let form = JobForm { due_day: "2026-11-24".into(), ..job_form() };
        assert_eq!(form.check(today(), None, |_| None).unwrap_err()["due_day"], FormProblem::Past);
    }

    #[test]
    fn an_old_due_day_left_alone_does_not_stand_in_the_way_of_an_edit() {
        let due = Due { day: today(), minutes: 600 };
        let job = Job { client: "Harbour Choir".into(), title: "Tour tees".into(), due: Some(due), ..Job::default() };
        let form = JobForm { notes: "fold".into(), ..JobForm::of(&job) };
        let fields = form.check(today().plus_days(3), Some(&job), |_| None).unwrap();
        assert_eq!(fields, [JobField::Notes("fold".into())]);
    }

    #[test]
    fn an_empty_time_means_closing_on_that_day() {
        let form = JobForm { due_day: "2026-11-26".into(), ..job_form() };
        let fields = form.check(today(), None, |_| Some(1000)).unwrap();
        assert!(fields.contains(&JobField::Due(Some(Due { day: today().plus_days(1), minutes: 1000 }))));
    }

    #[test]
    fn negative_pieces_are_refused_and_none_at_all_too() {
        let mut form = LotForm { garment: "Tee".into(), ..LotForm::default() };
        assert_eq!(form.check(None).unwrap_err()["pieces"], FormProblem::NoPieces);
        form.pieces.insert(Size::M, "-4".into());
        assert_eq!(form.check(None).unwrap_err()["pieces"], FormProblem::Number(NumberProblem::TooLow { least: 0.0 }));
    }

    #[test]
    fn an_impossible_dryer_is_answered_beside_its_field() {
        let form = RunForm { ink: "White".into(), dryer: "1000".into(), ..RunForm::default() };
        let problems = form.check(Units::UsCustomary, None).unwrap_err();
        assert_eq!(problems["dryer"], FormProblem::Number(NumberProblem::TooHigh { most: 500.0 }));
        assert_eq!(problems.len(), 1);
    }

    #[test]
    fn a_set_up_typed_in_inches_is_untouched_by_saving_it_in_centimetres() {
        let form = RunForm {
            ink: "White".into(),
            dryer: "320".into(),
            mesh: "156".into(),
            below_collar: "3".into(),
            off_contact: "0.125".into(),
            flash: true,
            flash_seconds: "7".into(),
            flash_distance: "3".into(),
            ..RunForm::default()
        };
        let mut run = Run::default();
        form.check(Units::UsCustomary, None).unwrap().iter().for_each(|field| run.set(field));
        let metric = RunForm::of(&run, Units::Metric);
        assert_eq!(metric.dryer, "160");
        assert_eq!(metric.below_collar, "7.62");
        assert_eq!(metric.check(Units::Metric, Some(&run)).unwrap(), []);
    }
}
