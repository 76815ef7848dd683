//! How long to expose.

mod choice;
mod damp;
pub(crate) mod distance;
mod lookup;
mod on_screens;
mod step_wedge;

pub use choice::{ExposureChoice, known_cloths, known_coats};
pub use damp::{HumidityEffect, MAX_HUMIDITY, humidity_effect};
pub use distance::{EdgeFalloff, FrameSize, NoDistanceLaw, edge_falloff, time_at_distance};
pub use lookup::{ExposureAnswer, ExposureDifference, ExposureQuery, ExposureRow, exposure_for, exposure_list};
pub use on_screens::{ScreensExposure, exposures_of};
pub use step_wedge::{COLUMN_SHARES, NoTestResult, TestAdvice, TestResult, from_columns, from_step_guide};
