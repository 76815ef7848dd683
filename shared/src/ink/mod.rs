//! Ink: colours as seen and as measured, how they differ, and how pigment makes them.
//!
//! From a reading to an answer: [`Lab`] or [`Reflectance`] (an instrument's curve, or the [`smoothest`]
//! that looks like a colour) → [`characterise`] a component from its drawdowns → [`predict`] a recipe, or
//! ask [`will_it_cover`].

mod characterise;
#[cfg(test)]
mod check_rows;
mod colour;
mod constants;
mod difference;
mod difference_words;
pub mod kubelka_munk;
mod lab;
mod opacity;
mod predict;
mod smoothest;
mod spectrum;
pub mod srgb;

pub use characterise::{Body, Characterised, Drawdown, Laid, characterise};
pub use colour::Colour;
pub use constants::Constants;
pub use difference::{ciede2000, cmc, cmc_2_1};
pub use difference_words::{Lean, Strength, Word, in_words};
pub use kubelka_munk::Surface;
pub use lab::Lab;
pub use opacity::{Cover, FULL_HIDING, Look, Way, Work, contrast_ratio, will_it_cover};
pub use predict::{Print, Seen, predict};
pub use smoothest::{Smoothest, smoothest};
pub use spectrum::{BANDS, Bands, FIRST_NM, Origin, Reflectance, STEP_NM, SpectrumProblem};
