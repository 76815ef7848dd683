//! The press: which run, its checks, the count, and what came of it.

mod check_row;
mod checks;
mod controls;
mod count;
mod ended;
mod expected;
mod pace;
mod pick;
mod run;
mod sheets;
mod sizes;
mod zone;

pub use expected::expected_words;
pub use pace::chance_tone;
pub use pick::PressScreen;
pub use run::{BesideCount, RunScreen};
