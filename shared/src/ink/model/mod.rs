//! Components, recipes, pots and events as the facts leave them.

mod component;
mod log;
mod pot;
mod pot_lists;
mod recipe;

pub use component::Component;
pub use log::{InkEvent, InkLog, Revision, Scale};
pub use pot::Pot;
pub use recipe::Recipe;
