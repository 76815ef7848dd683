//! Dryers and flash units: settings, measurements, settling times.

mod form;
mod list;
mod measure;
mod settling_times;

pub use form::DryerFormPage;
pub use list::DryersPage;
pub use measure::MeasureDryerPage;
pub use settling_times::SettlingTimesPage;
