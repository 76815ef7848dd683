//! The day: its runs against due times and closing.

mod closing;
pub(crate) mod model;
mod press;
mod set_up;
mod views;

pub use closing::closing_of;
pub use model::*;
pub use press::only_on_press;
pub(crate) use set_up::{open_runs, set_up_time};
pub use views::*;
