//! Screens, emulsions, lamps, exposures and the bath as the facts leave them.

mod bath;
mod emulsion;
mod exposure_log;
mod known_exposure;
mod lamp;
mod screen;
pub(crate) mod timed_state;

pub use bath::{Batch, Bath, Charge, DEFAULT_RECHARGE_PERCENT};
pub use emulsion::Emulsion;
pub use exposure_log::ExposureLog;
pub use known_exposure::KnownExposure;
pub use lamp::Lamp;
pub use screen::{Screen, ScreenChange, Screens};
pub use timed_state::ScreenEvent;
