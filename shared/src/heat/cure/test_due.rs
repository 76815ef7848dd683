//! Whether a cure test is due again.

use super::run_heat::heat_settings;
use super::tests_made::latest_tests;
use crate::facts::{Fabric, HeatSettings, TestKind, TestResult};
use crate::heat::CureTest;
use crate::ids::{RunId, Subject};
use crate::shop::Shop;
use crate::time::WallTime;
use crate::units::{Seconds, Temperature, TemperatureDelta};

/// Why a test is due.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DueReason {
    /// This ink never passed one on this fabric.
    NeverPassed,
    /// The latest test failed.
    Failed,
    /// Another dryer than at the last passed test.
    Dryer,
    /// Another dryer temperature.
    Temperature,
    /// The dryer's error was measured again and differs.
    Sensor,
    /// Another dwell.
    Dwell,
    /// Another number of passes.
    Passes,
    /// Another flash setting, or none.
    Flash,
    /// Other figures on the ink's sheet, or the sheet is gone.
    Sheet,
}

/// A test that passed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PassedTest {
    /// Its id.
    pub id: Subject,
    /// When its result was recorded.
    pub at: WallTime,
}

/// Whether one kind of test is due.
#[derive(Clone, Debug, PartialEq)]
pub struct TestDue {
    /// Kind of test.
    pub kind: TestKind,
    /// Why it is due; empty if it is not.
    pub why: Vec<DueReason>,
    /// The last test that passed.
    pub passed: Option<PassedTest>,
    /// A test under way.
    pub waiting: Option<Subject>,
}

/// Status of the tests of a run's ink on its fabric.
#[derive(Clone, Debug, PartialEq)]
pub struct TestStatus {
    /// The ink's name.
    pub ink: String,
    /// The fabric.
    pub fabric: Fabric,
    /// The wash test, which decides, then other kinds that the shop has made of this ink on this fabric.
    pub kinds: Vec<TestDue>,
}

impl TestStatus {
    /// Whether any test is due.
    pub fn is_due(&self) -> bool {
        self.kinds.iter().any(|kind| !kind.why.is_empty())
    }
}

/// Temperatures that differ by no more than this, in milli-°C, count as the same: 1 °C. Our own.
const SAME_DEGREES: i32 = 1_000;
/// Times that differ by no more than this, in milliseconds, count as the same: 1 s. Our own.
const SAME_MILLISECONDS: u32 = 1_000;

fn same_temperature(a: Option<Temperature>, b: Option<Temperature>) -> bool {
    match (a, b) {
        (Some(a), Some(b)) => TemperatureDelta::between(a, b).magnitude().milli_celsius() <= SAME_DEGREES,
        (a, b) => a == b,
    }
}

fn same_time(a: Option<Seconds>, b: Option<Seconds>) -> bool {
    match (a, b) {
        (Some(a), Some(b)) => a.milliseconds().abs_diff(b.milliseconds()) <= SAME_MILLISECONDS,
        (a, b) => a == b,
    }
}

/// The differences between the settings of a passed test and the current ones.
fn changes(then: &HeatSettings, now: &HeatSettings) -> Vec<DueReason> {
    let offset = |settings: &HeatSettings| settings.offset.unwrap_or_default().milli_celsius();
    [
        (then.dryer != now.dryer, DueReason::Dryer),
        (!same_temperature(then.temperature, now.temperature), DueReason::Temperature),
        (offset(then).abs_diff(offset(now)) > SAME_DEGREES as u32, DueReason::Sensor),
        (!same_time(then.dwell, now.dwell), DueReason::Dwell),
        (then.passes != now.passes, DueReason::Passes),
        (then.flash != now.flash, DueReason::Flash),
        (then.sheet != now.sheet, DueReason::Sheet),
    ]
    .into_iter()
    .filter(|(differs, _)| *differs)
    .map(|(_, why)| why)
    .collect()
}

fn due(kind: TestKind, tests: &[(Subject, &CureTest)], now: &HeatSettings) -> TestDue {
    // The latest result comes first.
    let of = |result| tests.iter().find(|(_, test)| test.kind == kind && test.result == result).copied();
    let passed = of(TestResult::Pass);
    let failed_since =
        of(TestResult::Fail).filter(|(_, fail)| passed.is_none_or(|(_, pass)| fail.result_at > pass.result_at));
    let mut why = passed.map_or_else(|| vec![DueReason::NeverPassed], |(_, test)| changes(&test.settings, now));
    if failed_since.is_some() {
        why.insert(0, DueReason::Failed);
    }
    TestDue {
        kind,
        why,
        passed: passed.map(|(id, test)| PassedTest { id, at: test.result_at }),
        waiting: of(TestResult::Waiting).map(|(id, _)| id),
    }
}

/// Status of the tests of a run's ink on its fabric, compared with the run's current settings. `None` if the
/// run, its ink or its fabric is unknown.
pub fn test_status(shop: &Shop, id: RunId) -> Option<TestStatus> {
    let run = shop.run(id)?;
    let fabric = shop.lot(run.lot?)?.fabric;
    let now = heat_settings(shop, id)?;
    if run.ink.trim().is_empty() {
        return None;
    }
    let tests = latest_tests(shop, &run.ink, fabric);
    let made = |kind| tests.iter().any(|(_, test)| test.kind == kind);
    let kinds = [TestKind::Wash, TestKind::Crock, TestKind::Stretch]
        .into_iter()
        .filter(|kind| *kind == TestKind::Wash || made(*kind))
        .map(|kind| due(kind, &tests, &now))
        .collect();
    Some(TestStatus { ink: run.ink.clone(), fabric, kinds })
}
