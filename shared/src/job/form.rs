//! The job, lot and run forms: checks what was typed and turns it into facts.
//!
//! A form holds text as typed. [`check`](JobForm::check) returns a problem for each invalid field and
//! leaves the form unchanged, so that a mistake loses no input.

use super::{Due, Fabric, Job, Lot, Size, SizePieces};
use crate::ink::Colour;
use crate::journal::{JobField, LotField, RunField};
use crate::plan::Day;
use crate::quantity::{BeltSpeed, Length, NumberProblem, Seconds, Temperature, Units, parse_number, parse_whole};
use crate::run::{Flash, Location, Run};
use crate::sorted::Map;

/// What is wrong with a field.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum FormProblem {
    /// It must not be empty.
    Missing,
    /// It is not a number, or is out of bounds.
    Number(NumberProblem),
    /// It is not a calendar date.
    NotADay,
    /// It is not a time of day.
    NotATime,
    /// The day has passed.
    Past,
    /// It is too long.
    TooLong {
        /// Most characters allowed.
        most: usize,
    },
    /// No size has any pieces.
    NoPieces,
    /// Another item already has this name.
    Taken,
    /// It is lower than a value that it must not be lower than.
    OutOfOrder,
    /// It is not a grade of the grey scale: 1 to 5 in half steps.
    NotAGrade,
    /// Too many items are added at once.
    TooMany {
        /// Most items allowed.
        most: usize,
    },
    /// The numbers are not a reflectance curve.
    NotACurve(crate::colour::SpectrumProblem),
}

/// Problems by field name; empty if there are none.
pub type Problems = Map<&'static str, FormProblem>;

/// Longest name, in characters.
const NAME: usize = 80;
/// Longest note, in characters.
const NOTE: usize = 2_000;

pub(crate) fn keep<T>(problems: &mut Problems, field: &'static str, read: Result<T, FormProblem>) -> Option<T> {
    read.map_err(|problem| problems.insert(field, problem)).ok()
}

pub(crate) fn keep_number<T>(
    problems: &mut Problems,
    field: &'static str,
    read: Result<T, NumberProblem>,
) -> Option<T> {
    keep(problems, field, read.map_err(FormProblem::Number))
}

/// Parses a field in which an empty text means "not known".
pub(crate) fn keep_optional<T>(
    problems: &mut Problems,
    field: &'static str,
    text: &str,
    read: impl FnOnce(&str) -> Result<T, NumberProblem>,
) -> Option<T> {
    if text.trim().is_empty() { None } else { keep_number(problems, field, read(text)) }
}

pub(crate) fn name(text: &str, most: usize) -> Result<String, FormProblem> {
    let tidy = text.trim();
    if tidy.chars().count() > most { Err(FormProblem::TooLong { most }) } else { Ok(tidy.to_owned()) }
}

pub(crate) fn required_name(text: &str) -> Result<String, FormProblem> {
    if text.trim().is_empty() { Err(FormProblem::Missing) } else { name(text, NAME) }
}

/// Parses a number that must not be empty.
pub(crate) fn required<T>(text: &str, read: impl FnOnce(&str) -> Result<T, NumberProblem>) -> Result<T, FormProblem> {
    if text.trim().is_empty() { Err(FormProblem::Missing) } else { read(text).map_err(FormProblem::Number) }
}

/// The fields that differ from the current ones: an edit records only what changed.
pub(crate) fn changed<F: PartialEq>(fields: Vec<F>, before: &[F]) -> Vec<F> {
    fields.into_iter().filter(|field| !before.contains(field)).collect()
}

/// A number as shown in a form: at most two decimals, without trailing zeros.
pub(crate) fn shown(value: f64) -> String {
    let text = format!("{value:.2}");
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

/// The form of a job.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct JobForm {
    /// Who ordered it.
    pub client: String,
    /// The job's name in the shop.
    pub title: String,
    /// Due date in ISO format, such as `2026-11-25`, or empty.
    pub due_day: String,
    /// Due time in 24-hour format, such as `16:30`; empty for closing time.
    pub due_time: String,
    /// Free notes.
    pub notes: String,
    /// Whether the sale is exempt from tax.
    pub exempt: bool,
}

impl JobForm {
    /// The form filled in from a job.
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

    /// The fields that changed, compared with `before`; all of them for a new job. `closing` returns the
    /// shop's closing time on a day in minutes after midnight, for an empty due time.
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

/// Minutes after midnight of a time such as `16:30`.
fn minutes_of(text: &str) -> Option<u16> {
    let (hours, minutes) = text.trim().split_once(':')?;
    let hours = parse_whole(hours, 0, 23).ok()?;
    let minutes = parse_whole(minutes.get(..2)?, 0, 59).ok()?;
    Some((hours * 60 + minutes) as u16)
}

/// The form of a garment lot.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct LotForm {
    /// The kind of garment.
    pub garment: String,
    /// The fabric.
    pub fabric: Fabric,
    /// Garment colour as `#rrggbb`.
    pub colour: String,
    /// Name of that colour.
    pub colour_name: String,
    /// Number of pieces of each size, as typed.
    pub pieces: Map<Size, String>,
}

impl LotForm {
    /// The form filled in from a lot.
    pub fn of(lot: &Lot) -> Self {
        Self {
            garment: lot.garment.clone(),
            fabric: lot.fabric,
            colour: lot.colour.map(|colour| colour.to_string()).unwrap_or_default(),
            colour_name: lot.colour_name.clone(),
            pieces: lot.pieces.iter().map(|(size, pieces)| (*size, pieces.to_string())).collect(),
        }
    }

    /// The fields that changed, compared with `before`; all of them for a new lot.
    ///
    /// # Errors
    /// [`Problems`] by field: `garment`, `colour_name`, `pieces`.
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

/// The form of a run. Numbers are in the device's units.
#[derive(Clone, Debug, PartialEq)]
pub struct RunForm {
    /// The print location.
    pub location: Location,
    /// Name of the ink.
    pub ink: String,
    /// Ink colour as `#rrggbb`.
    pub ink_colour: String,
    /// Labels of the screens.
    pub screens: String,
    /// Mesh count, in threads per inch or per centimetre.
    pub mesh: String,
    /// Whether there is a flash cure.
    pub flash: bool,
    /// Flash time in seconds.
    pub flash_seconds: String,
    /// Distance of the flash unit in inches or centimetres, or empty.
    pub flash_distance: String,
    /// Number of strokes that print ink.
    pub hits: String,
    /// Dryer temperature setting, in °F or °C.
    pub dryer: String,
    /// Belt speed in inches or centimetres per minute.
    pub belt: String,
    /// Dwell in the dryer, in seconds.
    pub dwell: String,
    /// Number of passes through the dryer.
    pub passes: String,
    /// The squeegee.
    pub squeegee: String,
    /// Off-contact in inches or millimetres.
    pub off_contact: String,
    /// Distance below the collar in inches or centimetres.
    pub below_collar: String,
    /// The placement in words.
    pub placement: String,
    /// Estimated seconds per piece.
    pub guess: String,
}

/// Longest distance below a collar at which a print can start, in inches.
const LOWEST_PRINT: f64 = 30.0;

impl RunForm {
    /// The form filled in from a run, in the device's units.
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

    /// The fields that changed, compared with `before`; all of them for a new run.
    ///
    /// # Errors
    /// [`Problems`] by the names of this form's fields.
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

    /// The fields that the user changed: a number whose text was not edited keeps its stored value, even if
    /// the device's units show it rounded.
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
                RunField::Lot(_)
                | RunField::Location(_)
                | RunField::Ink(_)
                | RunField::InkColour(_)
                | RunField::Screens(_)
                | RunField::Hits(_)
                | RunField::Passes(_)
                | RunField::Squeegee(_)
                | RunField::Placement(_)
                | RunField::Guess(_) => true,
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
        Units::Inch => f64::from(mesh),
        Units::Metric => f64::from(mesh) / 2.54,
    }
}

/// Parses a mesh count into threads per inch: meshes are woven from about 10 to 500 threads per inch.
fn parse_mesh(text: &str, units: Units) -> Result<u16, NumberProblem> {
    match units {
        Units::Inch => parse_whole(text, 10, 500).map(|mesh| mesh as u16),
        Units::Metric => parse_number(text, 4.0, 200.0).map(|mesh| (mesh * 2.54).round() as u16),
    }
}

fn off_contact_in_units(gap: Length, units: Units) -> f64 {
    match units {
        Units::Inch => gap.inches(),
        Units::Metric => gap.millimetres(),
    }
}

fn parse_off_contact(text: &str, units: Units) -> Result<Length, NumberProblem> {
    match units {
        Units::Inch => parse_number(text, 0.0, 1.0).map(Length::from_inches),
        Units::Metric => parse_number(text, 0.0, 25.0).map(Length::from_millimetres),
    }
}

impl Default for RunForm {
    fn default() -> Self {
        Self::of(&Run::default(), Units::Inch)
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
    fn due_before_today_is_reported_at_the_field() {
        let form = JobForm { due_day: "2026-11-24".into(), ..job_form() };
        assert_eq!(form.check(today(), None, |_| None).unwrap_err()["due_day"], FormProblem::Past);
    }

    #[test]
    fn an_edit_may_keep_a_due_date_that_has_passed() {
        let due = Due { day: today(), minutes: 600 };
        let job = Job { client: "Harbour Choir".into(), title: "Tour tees".into(), due: Some(due), ..Job::default() };
        let form = JobForm { notes: "fold".into(), ..JobForm::of(&job) };
        let fields = form.check(today().plus(3), Some(&job), |_| None).unwrap();
        assert_eq!(fields, [JobField::Notes("fold".into())]);
    }

    #[test]
    fn an_empty_time_means_closing_time_of_that_day() {
        let form = JobForm { due_day: "2026-11-26".into(), ..job_form() };
        let fields = form.check(today(), None, |_| Some(1000)).unwrap();
        assert!(fields.contains(&JobField::Due(Some(Due { day: today().plus(1), minutes: 1000 }))));
    }

    #[test]
    fn negative_pieces_and_no_pieces_at_all_are_refused() {
        let mut form = LotForm { garment: "Tee".into(), ..LotForm::default() };
        assert_eq!(form.check(None).unwrap_err()["pieces"], FormProblem::NoPieces);
        form.pieces.insert(Size::M, "-4".into());
        assert_eq!(form.check(None).unwrap_err()["pieces"], FormProblem::Number(NumberProblem::TooLow { least: 0.0 }));
    }

    #[test]
    fn an_impossible_dryer_temperature_is_reported_at_the_field() {
        let form = RunForm { ink: "White".into(), dryer: "1000".into(), ..RunForm::default() };
        let problems = form.check(Units::Inch, None).unwrap_err();
        assert_eq!(problems["dryer"], FormProblem::Number(NumberProblem::TooHigh { most: 500.0 }));
        assert_eq!(problems.len(), 1);
    }

    #[test]
    fn saving_in_centimetres_keeps_a_set_up_typed_in_inches() {
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
        form.check(Units::Inch, None).unwrap().iter().for_each(|field| run.set(field));
        let metric = RunForm::of(&run, Units::Metric);
        assert_eq!(metric.dryer, "160");
        assert_eq!(metric.below_collar, "7.62");
        assert_eq!(metric.check(Units::Metric, Some(&run)).unwrap(), []);
    }
}
