//! Ink: colours as seen and as measured, how they differ, and how pigment makes them.

#[cfg(test)]
mod check_rows;
mod colour;
mod difference;
mod difference_words;
pub mod kubelka_munk;
mod lab;
pub mod srgb;

pub use colour::Colour;
pub use difference::{ciede2000, cmc, cmc_2_1};
pub use difference_words::{Lean, Strength, Word, in_words};
pub use lab::Lab;
