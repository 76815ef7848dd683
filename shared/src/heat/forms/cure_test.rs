//! Form for a wash, crock or stretch test.

use crate::facts::{Fabric, Grade, HeatSettings, TestField, TestKind, TestMethod, TestResult};
use crate::form::{
    FormProblem, Problems, TYPED_NAME, TYPED_NOTE, collect, collect_number, parse_required_name, parse_text,
    trim_number,
};
use crate::heat::CureTest;
use crate::units::{parse_number, parse_whole};

/// The form of a cure test.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct TestForm {
    /// The ink's name.
    pub ink: String,
    /// The fabric.
    pub fabric: Fabric,
    /// What is tested.
    pub kind: TestKind,
    /// Test method.
    pub method: TestMethod,
    /// Details of the method.
    pub method_note: String,
    /// Number of runs of the method: washes, or strokes. Empty for none yet.
    pub times: String,
    /// Result so far.
    pub result: TestResult,
    /// Grade 1 to 5 in half steps, or empty.
    pub grade: String,
    /// Name of the tester, or empty.
    pub by: String,
    /// Notes.
    pub notes: String,
}

fn grade_of(text: &str) -> Result<Option<Grade>, FormProblem> {
    if text.trim().is_empty() {
        return Ok(None);
    }
    let halves = parse_number(text, 1.0, 5.0).map_err(|_| FormProblem::NotAGrade)? * 2.0;
    let grade = Grade::from_halves(halves as u8).filter(|_| halves.fract() == 0.0);
    grade.map(Some).ok_or(FormProblem::NotAGrade)
}

impl TestForm {
    /// The form filled with a test's current values.
    pub fn of(test: &CureTest) -> Self {
        Self {
            ink: test.ink.clone(),
            fabric: test.fabric,
            kind: test.kind,
            method: test.method,
            method_note: test.method_note.clone(),
            times: if test.times == 0 { String::new() } else { test.times.to_string() },
            result: test.result,
            grade: test.grade.map(|grade| trim_number(f64::from(grade.halves()) / 2.0)).unwrap_or_default(),
            by: test.by.clone().unwrap_or_default(),
            notes: test.notes.clone(),
        }
    }

    /// The fields that change the test `before`, or all fields for a new test. `settings` are the heat
    /// settings of the garment, recorded with a new test. A result is recorded only if it changed, so that
    /// editing the notes does not make an old test the latest.
    ///
    /// # Errors
    /// [`Problems`] by field: `ink`, `method_note`, `times`, `grade`, `by`, `notes`.
    pub fn check(&self, settings: Option<HeatSettings>, before: Option<&CureTest>) -> Result<Vec<TestField>, Problems> {
        let mut problems = Problems::new();
        let p = &mut problems;
        let ink = collect(p, "ink", parse_required_name(&self.ink));
        let method_note = collect(p, "method_note", parse_text(&self.method_note, TYPED_NOTE));
        let times = if self.times.trim().is_empty() { Ok(0) } else { parse_whole(&self.times, 0, 1_000) };
        let times = collect_number(p, "times", times);
        let grade = collect(p, "grade", grade_of(&self.grade));
        let by = collect(p, "by", parse_text(&self.by, TYPED_NAME));
        let notes = collect(p, "notes", parse_text(&self.notes, TYPED_NOTE));
        let (Some(ink), Some(method_note), Some(times), Some(grade), Some(by), Some(notes)) =
            (ink, method_note, times, grade, by, notes)
        else {
            return Err(problems);
        };
        let method = if TestMethod::of(self.kind).contains(&self.method) { self.method } else { TestMethod::Own };
        let was = before.map(Self::of).unwrap_or_default();
        let new = before.is_none();
        let mut fields: Vec<TestField> = [
            (new || ink != was.ink, TestField::Ink(ink)),
            (new || self.fabric != was.fabric, TestField::Fabric(self.fabric)),
            (new || self.kind != was.kind, TestField::Kind(self.kind)),
            (new || method != was.method, TestField::Method(method)),
            (method_note != was.method_note, TestField::MethodNote(method_note)),
            (self.times != was.times, TestField::Times(times as u16)),
            (new || self.result != was.result, TestField::Result(self.result)),
            (self.grade != was.grade, TestField::Grade(grade)),
            (by != was.by, TestField::By((!by.is_empty()).then_some(by))),
            (notes != was.notes, TestField::Notes(notes)),
        ]
        .into_iter()
        .filter(|(changed, _)| *changed)
        .map(|(_, field)| field)
        .collect();
        fields.extend(settings.map(TestField::Settings));
        Ok(fields)
    }
}
