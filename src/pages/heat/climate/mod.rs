//! The climate of the shop: its readings, and what work and rest they call for.

mod advice;
mod page;
mod strip;

pub use page::ClimatePage;
pub use strip::ClimateStrip;
