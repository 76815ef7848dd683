//! The stored fields of a test of a cure. **Frozen** as [`crate::facts::Fact`] is.

use super::sheet::SheetFigures;
use crate::bounds::{is_name, is_note};
use crate::codec::Encode;
use crate::facts::{Fabric, Flash, is_machine_time, is_shop_temperature, is_shop_temperature_change};
use crate::ids::Subject;
use crate::units::{Seconds, Temperature, TemperatureDelta};
use serde::{Deserialize, Serialize};

/// What is tested. **Frozen**: names and order are stored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Default, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case")]
pub enum TestKind {
    /// Wash test.
    #[default]
    Wash,
    /// Crock test: colour rubs off.
    Crock,
    /// Stretch test: the print cracks.
    Stretch,
}

/// Test method. **Frozen**: names and order are stored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case")]
pub enum TestMethod {
    /// The shop's own way: its washing machine, a white cloth, two hands.
    #[default]
    Own,
    /// AATCC 61, accelerated laundering.
    Aatcc61,
    /// AATCC 8, crockmeter.
    Aatcc8,
    /// ISO 105-X12, rubbing.
    Iso105X12,
    /// ISO 6330, domestic washing and drying procedures. It gives procedures, no pass mark.
    Iso6330,
}

impl TestMethod {
    /// The methods available for a kind of test.
    pub fn of(kind: TestKind) -> &'static [Self] {
        match kind {
            TestKind::Wash => &[Self::Own, Self::Aatcc61, Self::Iso6330],
            TestKind::Crock => &[Self::Own, Self::Aatcc8, Self::Iso105X12],
            TestKind::Stretch => &[Self::Own],
        }
    }

    /// How many home washes one run of the method stands for. AATCC 61: one 45-minute test approximates five,
    /// for colour loss and surface change, not for staining (scope of AATCC TM61). ISO 6330: each procedure
    /// is one domestic wash (its scope).
    pub fn washes_per_run(self) -> u16 {
        match self {
            Self::Aatcc61 => 5,
            Self::Own | Self::Aatcc8 | Self::Iso105X12 | Self::Iso6330 => 1,
        }
    }
}

/// Result of a test. **Frozen**: names and order are stored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case")]
pub enum TestResult {
    /// The test is under way.
    #[default]
    Waiting,
    /// Passed, in the shop's judgement.
    Pass,
    /// Failed.
    Fail,
}

/// A grade on a grey scale in half steps: 2 (grade 1, worst) to 10 (grade 5, best). **Frozen**: stored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, Encode)]
#[serde(transparent)]
pub struct Grade {
    halves: u8,
}

impl Grade {
    /// A grade from half steps; `None` outside 2 to 10 (grade 1 to 5).
    pub fn from_halves(halves: u8) -> Option<Self> {
        (2..=10).contains(&halves).then_some(Self { halves })
    }

    /// The grade in half steps, 2 to 10.
    pub fn halves(self) -> u8 {
        self.halves
    }
}

/// The heat settings a tested garment went through. **Frozen**: stored with each test.
#[derive(Clone, Debug, PartialEq, Eq, Default, Serialize, Deserialize, Encode)]
#[serde(deny_unknown_fields)]
pub struct HeatSettings {
    /// The dryer it went through.
    pub dryer: Option<Subject>,
    /// The dryer's setting.
    pub temperature: Option<Temperature>,
    /// The dryer's measured error at that time, if known.
    pub offset: Option<TemperatureDelta>,
    /// Dwell: time in the heat for one pass.
    pub dwell: Option<Seconds>,
    /// Passes through the dryer.
    pub passes: u8,
    /// Flash settings; `None` if not flashed.
    pub flash: Option<Flash>,
    /// Figures of the ink's sheet at that time.
    pub sheet: Option<SheetFigures>,
}

impl HeatSettings {
    fn in_bounds(&self) -> bool {
        self.temperature.is_none_or(is_shop_temperature)
            && self.offset.is_none_or(is_shop_temperature_change)
            && self.dwell.is_none_or(is_machine_time)
            && self.flash.is_none_or(|flash| is_machine_time(flash.seconds))
            && self.sheet.is_none_or(|sheet| sheet.in_bounds())
    }
}

/// A field of a test. **Frozen**: stored.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum TestField {
    /// The ink's name.
    Ink(String),
    /// The fabric.
    Fabric(Fabric),
    /// What is tested.
    Kind(TestKind),
    /// Test method.
    Method(TestMethod),
    /// Details of the method: which procedure, temperature, cloth.
    MethodNote(String),
    /// Number of runs of the method: washes, or strokes.
    Times(u16),
    /// Result so far.
    Result(TestResult),
    /// Grade, if a grey scale was used.
    Grade(Option<Grade>),
    /// Heat settings of the tested garment.
    Settings(HeatSettings),
    /// Name of the tester, if entered.
    By(Option<String>),
    /// Free notes.
    Notes(String),
}

impl TestField {
    pub(crate) fn in_bounds(&self) -> bool {
        match self {
            Self::Ink(text) => is_name(text),
            Self::By(by) => by.iter().all(|text| is_name(text)),
            Self::MethodNote(text) | Self::Notes(text) => is_note(text),
            Self::Grade(grade) => grade.is_none_or(|grade| (2..=10).contains(&grade.halves)),
            Self::Settings(settings) => settings.in_bounds(),
            Self::Fabric(_) | Self::Kind(_) | Self::Method(_) | Self::Times(_) | Self::Result(_) => true,
        }
    }
}
