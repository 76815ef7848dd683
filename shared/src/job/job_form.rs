//! The form of a job.
//!
//! A form holds the text as typed. Nothing is lost by a mistake: [`check`](JobForm::check) answers
//! with a problem for each field that has one, and the form stays as it is.

use super::Job;
use crate::facts::JobField;
use crate::form::{FormProblem, Problems, TYPED_NOTE, changed_fields, collect, parse_required_name, parse_text};
use crate::plan::model::DEFAULT_CLOSING;
use crate::time::{Day, Due, TimeOfDay};
use serde::{Deserialize, Serialize};

/// The form of a job.
#[derive(Clone, Debug, PartialEq, Default, Serialize, Deserialize)]
#[serde(default)]
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
            due_time: job.due.map(|due| due.time.to_string()).unwrap_or_default(),
            notes: job.notes.clone(),
            exempt: job.exempt,
        }
    }

    /// The form of a job that repeats this one: everything but the due date.
    pub fn again(job: &Job) -> Self {
        Self { due_day: String::new(), due_time: String::new(), ..Self::of(job) }
    }

    /// The fields that changed, compared with `before`; all of them for a new job. `closing` returns the
    /// shop's closing time on a day, for an empty due time.
    ///
    /// # Errors
    /// [`Problems`] by field: `client`, `title`, `due_day`, `due_time`, `notes`.
    pub fn check(
        &self,
        today: Day,
        before: Option<&Job>,
        closing: impl Fn(Day) -> Option<TimeOfDay>,
    ) -> Result<Vec<JobField>, Problems> {
        let mut problems = Problems::new();
        let client = collect(&mut problems, "client", parse_required_name(&self.client));
        let title = collect(&mut problems, "title", parse_required_name(&self.title));
        let notes = collect(&mut problems, "notes", parse_text(&self.notes, TYPED_NOTE));
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
            Some(job) => changed_fields(
                now,
                &fields(job.client.clone(), job.title.clone(), job.due, job.notes.clone(), job.exempt),
            ),
            None => now,
        })
    }

    fn due(
        &self,
        today: Day,
        before: Option<Due>,
        closing: impl Fn(Day) -> Option<TimeOfDay>,
        problems: &mut Problems,
    ) -> Option<Due> {
        if self.due_day.trim().is_empty() {
            if !self.due_time.trim().is_empty() {
                problems.insert("due_day", FormProblem::Missing);
            }
            return None;
        }
        let day = collect(problems, "due_day", Day::from_iso(self.due_day.trim()).ok_or(FormProblem::NotADay))?;
        let time = if self.due_time.trim().is_empty() {
            closing(day).unwrap_or(DEFAULT_CLOSING)
        } else {
            collect(problems, "due_time", TimeOfDay::parse(&self.due_time).ok_or(FormProblem::NotATime))?
        };
        let due = Due { day, time };
        if day < today && before != Some(due) {
            problems.insert("due_day", FormProblem::Past);
        }
        Some(due)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::facts::Size;
    use crate::job::LotForm;
    use crate::run::{Run, RunForm};
    use crate::units::{NumberProblem, Units};

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
        let due = Due { day: today(), time: TimeOfDay::at(10, 0) };
        let job = Job { client: "Harbour Choir".into(), title: "Tour tees".into(), due: Some(due), ..Job::default() };
        let form = JobForm { notes: "fold".into(), ..JobForm::of(&job) };
        let fields = form.check(today().plus_days(3), Some(&job), |_| None).unwrap();
        assert_eq!(fields, [JobField::Notes("fold".into())]);
    }

    #[test]
    fn an_empty_time_means_closing_time_of_that_day() {
        let form = JobForm { due_day: "2026-11-26".into(), ..job_form() };
        let fields = form.check(today(), None, |_| Some(TimeOfDay::at(16, 40))).unwrap();
        let due = Due { day: today().plus_days(1), time: TimeOfDay::at(16, 40) };
        assert!(fields.contains(&JobField::Due(Some(due))));
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
        let problems = form.check(Units::US, None).unwrap_err();
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
        form.check(Units::US, None).unwrap().iter().for_each(|field| run.set(field));
        let metric = RunForm::of(&run, Units::METRIC);
        assert_eq!(metric.dryer, "160");
        assert_eq!(metric.below_collar, "7.62");
        assert_eq!(metric.check(Units::METRIC, Some(&run)).unwrap(), []);
    }

    #[test]
    fn an_off_contact_of_a_sixteenth_is_copied_to_the_next_run_unchanged() {
        let form = RunForm { ink: "White".into(), off_contact: "1/16".into(), ..RunForm::default() };
        let mut run = Run::default();
        form.check(Units::US, None).unwrap().iter().for_each(|field| run.set(field));
        let copy = RunForm::of(&run, Units::US);
        assert_eq!(copy.off_contact, "1/16");
        let mut next = Run::default();
        copy.check(Units::US, None).unwrap().iter().for_each(|field| next.set(field));
        assert_eq!(next.set_up.off_contact, run.set_up.off_contact);
    }
}
