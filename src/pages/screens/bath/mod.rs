//! The reclaim bath: its charge, what is in it, how it did.

mod charge;
mod chart;
mod contents;
mod history;
mod page;
mod put_in;
mod settings;
mod take_out;

pub use page::BathPage;
pub use settings::BathSettingsPage;
