//! Dryers, flash units and ink cure; fabric heat limits; and heat stress in the shop.
//!
//! Computed figures never promise a cure: only a wash test shows it, and [`test_status`] reports when the
//! next one is due.
//!
//! # Decisions
//!
//! - **Ink temperature.** The ink's temperature is the dryer's setting plus the error measured with a probe
//!   or strip. Without a measurement the cure is unknown, while a limit is still checked against the bare
//!   setting, so both errors fall on the cautious side. A measurement older than 90 days, or taken more than
//!   25 °C away from the setting, is not relied on for a limit.
//! - **Measured for a run.** What is measured for the dryer's check is compared with the limits and the ink's cure
//!   temperature first, and a measured dwell or belt speed with the cure's time; only then does the check's tolerance apply,
//!   which may reach past none of them. What breaches one holds until it is measured again: taking the check back or a look at
//!   the display does not lift it, nor does setting another value and then this one again. What was measured before such
//!   a change is shown and checks nothing, since the dryer has to settle again. A dryer measured away from its setting and
//!   then timed until it settled has changed since.
//! - **Infrared** at the exit misses the hottest moment: it may hold a fabric, and never clears it. For limits the latest
//!   reading by probe or strip near the setting counts, and after it only what is hotter. Read for a run's check, it makes
//!   none; that is asked each time, since a printer with an infrared gun takes what it shows for the print's temperature.
//! - **Canvas** is taken for cotton, since most of it is. Whether the dye limit of polyester counts is unknown, and
//!   shown as that, until the shop sets its own limit.
//! - **Limits.** Of two published limits the lower is the default. Raising it is a fact with a reason.
//! - **Changeover.** It is computed from the dryer's current temperature (the setting of the run before, or a
//!   timed settling), and holds ink off the screen until the dryer was checked. While ink must be held, the
//!   start button is below all open steps, its dialog offers the cautious answer first, and going on records
//!   a skipped check of the dryer.
//! - **Settling** is learned per dryer, separately for heating and cooling, as the median of seconds per
//!   degree. "It has settled" ends the timing and also checks the dryer. A time that no dryer takes teaches nothing; one
//!   unlike this dryer is asked about first, and may be left out or undone. One log alone does not shorten the wait.
//! - **Rest.** The table of work and rest is for 30 % humidity. Of the table and the level of the heat index the more
//!   careful counts; above 30 % no minutes are computed, since no source for them was found, and the reason is shown beside the advice.

mod changeover;
mod climate;
pub(crate) mod cure;
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
pub use lists::{heater_list, inks_without_sheet, settling_log, sheet_list, tests_due};
pub use model::*;
