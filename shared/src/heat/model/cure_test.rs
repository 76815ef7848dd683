//! A test of a cure.

use crate::codec::Encode;
use crate::facts::{Fabric, Grade, HeatSettings, TestField, TestKind, TestMethod, TestResult};
use crate::time::WallTime;

/// A cure test.
#[derive(Clone, Debug, PartialEq, Default, Encode)]
pub struct CureTest {
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
    /// Number of runs of the method.
    pub times: u16,
    /// Result so far.
    pub result: TestResult,
    /// When the result was last recorded.
    pub result_at: WallTime,
    /// Grade, if a grey scale was used.
    pub grade: Option<Grade>,
    /// Heat settings of the tested garment.
    pub settings: HeatSettings,
    /// Name of the tester, if entered.
    pub by: Option<String>,
    /// Free notes.
    pub notes: String,
    /// Wall time of its first fact.
    pub created: WallTime,
    /// Whether it was deleted.
    pub deleted: bool,
}

impl CureTest {
    /// How many home washes the test stands for; 0 for other kinds of test.
    pub fn home_washes(&self) -> u16 {
        match self.kind {
            TestKind::Wash => self.times.saturating_mul(self.method.washes_per_run()),
            TestKind::Crock | TestKind::Stretch => 0,
        }
    }

    pub(crate) fn set(&mut self, at: WallTime, field: &TestField) {
        match field {
            TestField::Ink(ink) => self.ink.clone_from(ink),
            TestField::Fabric(fabric) => self.fabric = *fabric,
            TestField::Kind(kind) => self.kind = *kind,
            TestField::Method(method) => self.method = *method,
            TestField::MethodNote(note) => self.method_note.clone_from(note),
            TestField::Times(times) => self.times = *times,
            TestField::Result(result) => (self.result, self.result_at) = (*result, at),
            TestField::Grade(grade) => self.grade = *grade,
            TestField::Settings(settings) => self.settings = settings.clone(),
            TestField::By(by) => self.by.clone_from(by),
            TestField::Notes(notes) => self.notes.clone_from(notes),
        }
    }
}
