//! Ink: for now, the colours of inks and garments as a screen shows them.

mod colour;

pub use colour::Colour;
