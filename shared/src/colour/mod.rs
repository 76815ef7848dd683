//! Colour: as seen and as measured, how two differ, and how pigment makes them.
//!
//! From a reading to an answer: [`Lab`] or [`Reflectance`] (an instrument's curve, or the [`smoothest`]
//! that looks like a colour) → [`characterise`] a component from its drawdowns → [`predict`] a recipe, or
//! ask [`will_it_cover`]; hold a pot to its reading with [`anchored_to_colour`] and ask
//! [`correction::what_to_add`].

// The letters are those of the published formulae; small systems of equations are plainest by row and column.
#![allow(clippy::many_single_char_names, clippy::needless_range_loop)]

mod anchor;
mod characterise;
#[cfg(test)]
mod check_rows;
mod constants;
pub mod correction;
mod difference;
mod difference_words;
pub mod kubelka_munk;
mod lab;
mod opacity;
pub mod photo_reading;
mod predict;
mod rgb;
mod smoothest;
mod spectrum;
pub mod srgb;
mod strength;

pub use anchor::{Anchored, anchored_to_colour, anchored_to_curve};
pub use characterise::{Body, Characterised, Drawdown, Laid, characterise};
pub use constants::Constants;
pub use difference::{ciede2000, cmc, cmc_2_1};
pub use difference_words::{Lean, Strength, Word, in_words};
pub use kubelka_munk::Surface;
pub use lab::Lab;
pub use opacity::{Cover, FULL_HIDING, Look, Way, Work, contrast_ratio, will_it_cover};
pub use predict::{Print, Seen, predict};
pub use rgb::Colour;
pub use smoothest::{Smoothest, smoothest};
pub use spectrum::{BANDS, Bands, FIRST_NM, Origin, Reflectance, STEP_NM, SpectrumProblem};
pub use strength::{Lesson, strength};
