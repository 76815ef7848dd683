//! Dryer, flash and cure; and the heat of the room.
//!
//! What is on paper never promises a cure: the wash test decides, and [`test_standing`] says when it is
//! due again.

mod changeover;
mod climate;
mod cure;
mod forms;
mod lists;
pub(crate) mod model;

pub use crate::facts::{
    Grade, HeatFact, HeatSettings, HeaterField, HeaterKind, LimitKind, SensorMethod, SheetField, SheetFigures,
    TestField, TestKind, TestMethod, TestResult, TrialField, TrialVerdict,
};
pub use changeover::*;
pub use climate::*;
pub use cure::*;
pub use forms::*;
pub use lists::{inks_without_sheet, settling_log, sheet_list, tests_due, unit_list};
pub use model::*;
