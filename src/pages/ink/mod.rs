//! Ink: recipes and components, the pots, and their colour.

pub mod colour;
pub mod pot;
mod record;
pub mod shelf;

pub use shelf::RunInkRows;
