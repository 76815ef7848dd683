//! Dryer, flash and cure; and the heat of the room.
//!
//! What is on paper never promises a cure: the wash test decides, and [`test_standing`] says when it is
//! due again.

mod changeover;
mod cure;
mod cure_test;
mod dwell;
mod heat_index;
mod heater;
mod heater_form;
mod limits;
mod lists;
mod log;
mod room;
mod room_brief;
mod room_form;
mod run_heat;
mod settled;
mod settling;
mod sheet;
mod sheet_form;
mod start;
mod test_due;
mod test_form;
mod trial;
mod trial_form;
mod typed;
mod work_rest;

pub use crate::facts::heat::{HeatFact, LimitKind};
pub use crate::facts::{
    Grade, HeatSettings, HeaterField, HeaterKind, SensorMethod, SheetField, SheetFigures, TestField, TestKind,
    TestMethod, TestResult, TrialField, TrialVerdict,
};
pub use changeover::{Changeover, HeatCall, SettlingNow, StandsBy, Wait, changeover, changeover_between};
pub use cure::{CureOnPaper, LimitFinding, LimitName, LimitState, Missing, cure_on_paper};
pub use cure_test::{CureTest, test_log, tests_of};
pub use dwell::{dwell, fastest_belt, passes_for};
pub use heat_index::{HeatIndex, HeatLevel, Water, heat_index};
pub use heater::{Heater, SensorReading};
pub use heater_form::{HeaterForm, SensorForm, SettlingForm};
pub use limits::{FabricLimit, LimitOrigin, OwnLimit, fabric_limit, fabric_limits};
pub use lists::{inks_without_sheet, settling_log, sheet_list, tests_due, unit_list};
pub use log::HeatLog;
pub use room::{RoomCaveat, RoomReading, RoomRow, RoomView, room_view};
pub use room_brief::{RoomBrief, room_brief};
pub use room_form::RoomForm;
pub use run_heat::{
    CureConflict, DryerChoice, DryerUsed, DwellView, HeatCaveat, RunHeat, SensorView, heat_settings, run_heat,
};
pub use settled::settled_facts;
pub use settling::{Direction, Settling, SettlingBasis, SettlingPace, settling_pace, settling_time};
pub use sheet::{InkSheet, ink_key, sheet_for};
pub use sheet_form::{FabricLimitForm, SheetForm};
pub use start::left_out_at_start;
pub use test_due::{TestDue, TestStanding, WhyDue, test_standing};
pub use test_form::TestForm;
pub use trial::{Trial, TrialFit, trial_log, trials_for};
pub use trial_form::TrialForm;
pub use work_rest::{Assumption, Schedule, WorkRest, work_rest};
