//! Dryers, flash units and ink cure; fabric heat limits; and heat stress in the shop.
//!
//! Computed figures never promise a cure: only a wash test shows it, and [`test_standing`] reports when the
//! next one is due.
//!
//! # Decisions
//!
//! - **Ink temperature.** The ink's temperature is the dryer's setting plus the error measured with a probe
//!   or strip. Without a measurement the cure is unknown, while a limit is still checked against the bare
//!   setting, so both errors fall on the cautious side. A measurement older than 90 days, or taken more than
//!   25 °C away from the setting, is not relied on for a limit.
//! - **Limits.** Of two published limits the lower is the default. Raising it is a fact with a reason.
//! - **Changeover.** It is computed from the dryer's current temperature (the setting of the run before, or a
//!   timed settling), and holds ink off the screen until the dryer was checked. While ink must be held, the
//!   start button is below all open steps, its dialog offers the cautious answer first, and going on records
//!   a skipped check of the dryer.
//! - **Settling** is learned per dryer, separately for heating and cooling, as the median of seconds per
//!   degree. "It has settled" ends the timing and also checks the dryer.

mod changeover;
mod cure;
mod cure_test;
mod dwell;
mod fact;
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

pub use changeover::{Changeover, HeatCall, SettlingNow, StandsBy, Wait, changeover, changeover_between};
pub use cure::{CureOnPaper, LimitFinding, LimitName, LimitState, Missing, cure_on_paper};
pub use cure_test::{CureTest, Grade, HeatSettings, TestField, TestKind, TestMethod, TestResult, test_log, tests_of};
pub use dwell::{dwell, fastest_belt, passes_for};
pub use fact::HeatFact;
pub use heat_index::{HeatIndex, HeatLevel, Water, heat_index};
pub use heater::{Heater, HeaterField, HeaterKind, SensorMethod, SensorReading};
pub use heater_form::{HeaterForm, SensorForm, SettlingForm};
pub use limits::{FabricLimit, LimitKind, LimitOrigin, OwnLimit, fabric_limit, fabric_limits};
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
pub use sheet::{InkSheet, SheetField, SheetFigures, ink_key, sheet_for};
pub use sheet_form::{FabricLimitForm, SheetForm};
pub use start::left_out_at_start;
pub use test_due::{TestDue, TestStanding, WhyDue, test_standing};
pub use test_form::TestForm;
pub use trial::{Trial, TrialField, TrialFit, TrialVerdict, trial_log, trials_for};
pub use trial_form::TrialForm;
pub use work_rest::{Assumption, Schedule, WorkRest, work_rest};
