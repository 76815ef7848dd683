//! The reclaim bath: its charge, its contents, its history.

mod charge;
mod chart;
mod contents;
mod dialog;
mod history;
mod page;
mod put_in;
mod settings;
mod take_out;

pub use page::BathPage;
pub use settings::BathSettingsPage;
