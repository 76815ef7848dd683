//! The stored fields of a test of a cure. **Frozen** as [`crate::facts::Fact`] is.

use super::sheet::SheetFigures;
use crate::bounds::{is_name, is_note};
use crate::codec::Encode;
use crate::facts::{Fabric, Flash, is_met, is_reachable, is_set};
use crate::ids::Subject;
use crate::units::{Seconds, Temperature, TemperatureDelta};
use serde::{Deserialize, Serialize};

/// What is tested. **Frozen** names and order: they are stored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Default, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case")]
pub enum TestKind {
    /// Washing.
    #[default]
    Wash,
    /// Rubbing off.
    Crock,
    /// Stretching until it would crack.
    Stretch,
}

/// By which method. **Frozen** names and order: they are stored.
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
    /// The methods there are for a kind of test.
    pub fn of(kind: TestKind) -> &'static [Self] {
        match kind {
            TestKind::Wash => &[Self::Own, Self::Aatcc61, Self::Iso6330],
            TestKind::Crock => &[Self::Own, Self::Aatcc8, Self::Iso105X12],
            TestKind::Stretch => &[Self::Own],
        }
    }

    /// To how many home washes one run of the method comes. AATCC 61: one 45-minute test approximates
    /// five, for colour loss and surface change, not for staining (scope of AATCC TM61). ISO 6330: each
    /// procedure is one domestic wash (its scope).
    pub fn washes_a_run(self) -> u16 {
        match self {
            Self::Aatcc61 => 5,
            Self::Own | Self::Aatcc8 | Self::Iso105X12 | Self::Iso6330 => 1,
        }
    }
}

/// How a test stands. **Frozen** names and order: they are stored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case")]
pub enum TestResult {
    /// Under way.
    #[default]
    Waiting,
    /// Passed, in the eyes of the shop.
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
    /// From half steps; none outside grade 1 to 5.
    pub fn from_halves(halves: u8) -> Option<Self> {
        (2..=10).contains(&halves).then_some(Self { halves })
    }

    /// In half steps.
    pub fn halves(self) -> u8 {
        self.halves
    }
}

/// What a garment went through. **Frozen**: stored with each test.
#[derive(Clone, Debug, PartialEq, Eq, Default, Serialize, Deserialize, Encode)]
#[serde(deny_unknown_fields)]
pub struct HeatSettings {
    /// Which dryer.
    pub dryer: Option<Subject>,
    /// What it was set to.
    pub temperature: Option<Temperature>,
    /// What was known of its error.
    pub offset: Option<TemperatureDelta>,
    /// Time in the heat, one pass.
    pub dwell: Option<Seconds>,
    /// Passes.
    pub passes: u8,
    /// Flash, or none.
    pub flash: Option<Flash>,
    /// What the ink's sheet said.
    pub sheet: Option<SheetFigures>,
}

impl HeatSettings {
    fn in_bounds(&self) -> bool {
        self.temperature.is_none_or(is_met)
            && self.offset.is_none_or(is_reachable)
            && self.dwell.is_none_or(is_set)
            && self.flash.is_none_or(|flash| is_set(flash.seconds))
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
    /// By which method.
    Method(TestMethod),
    /// How exactly: which procedure, temperature, cloth.
    MethodNote(String),
    /// Runs of the method: washes, or strokes.
    Times(u16),
    /// How it stands.
    Result(TestResult),
    /// The grade, where a grey scale was used.
    Grade(Option<Grade>),
    /// What the garment went through.
    Settings(HeatSettings),
    /// Who tested.
    By(Option<String>),
    /// Anything else to know.
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
