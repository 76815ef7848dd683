//! A test of a cure.

use crate::codec::Encode;
use crate::facts::{Fabric, Grade, HeatSettings, TestField, TestKind, TestMethod, TestResult};
use serde::{Deserialize, Serialize};

/// A test of a cure.
#[derive(Clone, Debug, PartialEq, Default, Serialize, Deserialize, Encode)]
pub struct CureTest {
    /// The ink's name.
    pub ink: String,
    /// The fabric.
    pub fabric: Fabric,
    /// What is tested.
    pub kind: TestKind,
    /// By which method.
    pub method: TestMethod,
    /// How exactly.
    pub method_note: String,
    /// Runs of the method.
    pub times: u16,
    /// How it stands.
    pub result: TestResult,
    /// When the result was told last.
    pub told: u64,
    /// The grade, where a grey scale was used.
    pub grade: Option<Grade>,
    /// What the garment went through.
    pub settings: HeatSettings,
    /// Who tested.
    pub by: Option<String>,
    /// Anything else to know.
    pub notes: String,
    /// Wall time of its first fact.
    pub created: u64,
    /// Whether it was deleted.
    pub deleted: bool,
}

impl CureTest {
    /// How many home washes it stands for; nothing for other tests.
    pub fn home_washes(&self) -> u16 {
        match self.kind {
            TestKind::Wash => self.times.saturating_mul(self.method.washes_a_run()),
            TestKind::Crock | TestKind::Stretch => 0,
        }
    }

    pub(crate) fn set(&mut self, at: u64, field: &TestField) {
        match field {
            TestField::Ink(ink) => self.ink.clone_from(ink),
            TestField::Fabric(fabric) => self.fabric = *fabric,
            TestField::Kind(kind) => self.kind = *kind,
            TestField::Method(method) => self.method = *method,
            TestField::MethodNote(note) => self.method_note.clone_from(note),
            TestField::Times(times) => self.times = *times,
            TestField::Result(result) => (self.result, self.told) = (*result, at),
            TestField::Grade(grade) => self.grade = *grade,
            TestField::Settings(settings) => self.settings = settings.clone(),
            TestField::By(by) => self.by.clone_from(by),
            TestField::Notes(notes) => self.notes.clone_from(notes),
        }
    }
}
