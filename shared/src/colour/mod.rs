//! Colour: as seen and as measured, how two differ, and how pigment makes them.
//!
//! From a reading to an answer: [`Lab`] or [`Reflectance`] (an instrument's curve, or the [`smoothest()`] with a given
//! colour) → [`characterise()`] a component from its drawdowns → [`predict()`] a recipe, or ask [`will_it_cover`]; correct
//! a pot's prediction by its reading with [`anchored_to_colour`] and ask [`correction::what_to_add`].
//!
//! # Decisions
//!
//! - Colour is Lab under D65, computed from 31 bands. A colour without a measured curve gets the smoothest curve that
//!   has it, and everything that depends on it is marked [`Origin::Reconstructed`].
//! - K and S are per film of the shop's own drawdowns, so that one theory covers pot, film and garment.
//! - A correction starts from the pot's reading ([`anchored_to_colour`]), not from its recipe.
//! - The search for additions optimises only promising starts. One test checks it against trying every choice,
//!   another against scipy. One more component is advised only for a gain of 0.2 of CIEDE2000
//!   ([`correction::MIN_GAIN`]).
//! - A photo is trusted for the difference of two patches, never for one colour. Clipped, uneven or patchy photos are
//!   refused rather than corrected far. Under lamps, with the contrast of a phone, about two fifths of a
//!   difference are uncertain ([`photo_reading::photo_uncertainty`], from rendered photos); from four units on the app
//!   says so.

// The letters are those of the published formulae; small systems of equations are clearest by row and column.
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
pub use characterise::{Characterised, Drawdown, Layer, OpacityClass, characterise};
pub use constants::Constants;
pub use difference::{ciede2000, cmc, cmc_2_1};
pub use difference_words::{DifferenceDirection, DifferenceSize, DifferenceWord, describe_difference};
pub use kubelka_munk::Surface;
pub use lab::Lab;
pub use opacity::{Appearance, Coverage, FULL_HIDING, LabourTimes, PrintSequence, contrast_ratio, will_it_cover};
pub use predict::{Print, Viewing, predict};
pub use rgb::Colour;
pub use smoothest::{Smoothest, smoothest};
pub use spectrum::{BANDS, Bands, FIRST_NM, Origin, Reflectance, STEP_NM, SpectrumProblem};
pub use strength::{CorrectionSample, learned_strength};
