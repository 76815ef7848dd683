//! How long to expose.

mod damp;
pub(crate) mod distance;
mod lookup;
mod step_wedge;

pub use damp::{DAMPEST, DampNote, damp_note};
pub use distance::{EdgeLight, NoDistanceLaw, edge_light, time_at_distance};
pub use lookup::{Difference, ExposureAnswer, ExposureAsked, ExposureRow, exposure_for, exposure_list};
pub use step_wedge::{CALCULATOR_COLUMNS, NoReading, TestAdvice, TestReading, from_columns, from_step_guide};
