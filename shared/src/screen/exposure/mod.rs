//! How long to expose.

mod choice;
mod damp;
pub(crate) mod distance;
mod lookup;
mod step_wedge;

pub use choice::{ExposureChoice, known_cloths, known_coats};
pub use damp::{HumidityEffect, MAX_HUMIDITY, humidity_effect};
pub use distance::{EdgeFalloff, FrameSize, NoDistanceLaw, edge_falloff, time_at_distance};
pub use lookup::{ExposureAnswer, ExposureDifference, ExposureQuery, ExposureRow, exposure_for, exposure_list};
pub use step_wedge::{CALCULATOR_COLUMNS, NoTestResult, TestAdvice, TestResult, from_columns, from_step_guide};
