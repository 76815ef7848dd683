//! Components, recipes, pots and events as the facts leave them.

mod component;
mod event;
mod log;
mod pot;
mod pot_lists;
mod recipe;
mod stock;

pub use component::Component;
pub use event::InkEvent;
pub use log::{InkLog, Revision, Scale};
pub use pot::Pot;
pub use recipe::Recipe;
pub(crate) use stock::Stock;
