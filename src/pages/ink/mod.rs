//! Ink: the shelf of recipes and components, the pots, their colour.

pub mod colour;
pub mod pot;
mod record;
pub mod shelf;

pub use shelf::RunInkRows;
