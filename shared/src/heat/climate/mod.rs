//! The heat of the room, and what it asks of people.

mod brief;
mod heat_index;
mod view;
mod work_rest;

pub use brief::{ClimateSummary, climate_summary};
pub use heat_index::{HeatIndex, HeatLevel, Water, heat_index};
pub use view::{ClimateCaveat, ClimateRow, ClimateView, climate_view};
pub use work_rest::{Assumption, RestReason, Schedule, WorkRest, work_rest};
