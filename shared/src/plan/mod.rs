//! The day: its runs compared with due times and closing, and what was done.
//!
//! # Decisions
//!
//! - A rail run fits with a probability of 0.9 or more. The variances of the runs are added up along the
//!   rail, so uncertainty grows towards the end of the day.
//! - The working day turns at four in the morning: a run across midnight stays in its day, and a closing at one belongs
//!   to the evening before.
//! - The set-up time between runs is learned from the shop's own changes; until there are three, it is what
//!   the shop entered, or ten minutes.

mod closing;
pub(crate) mod model;
mod press;
mod set_up;
mod views;

pub use closing::{closing_on, closing_today, moved_closing};
pub use model::*;
pub use press::only_on_press;
pub(crate) use set_up::{open_runs, set_up_time};
pub use views::*;
