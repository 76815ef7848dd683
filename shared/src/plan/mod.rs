//! The day: its runs compared with due times and closing, and what was done.
//!
//! # Decisions
//!
//! - Nothing is said to be in time below a probability of 0.95, nor late above 0.05, and neither on a guess alone; the
//!   words between are those of the count (`run::Likelihood`). The doubts of the runs are added up along the
//!   rail, so uncertainty grows towards the end of the day; what their forecasts learned from the same earlier
//!   runs is wrong for all of them at once.
//! - Nights and days off are no working time. Work begins when the shop's days usually do; until three days tell,
//!   at eight.
//! - A job without a due time is not due today.
//! - The working day turns at four in the morning: a run across midnight stays in its day, and a closing at one belongs
//!   to the evening before.
//! - The set-up time between runs is learned from the shop's own changes; until there are three, it is what
//!   the shop entered, or ten minutes.

mod calendar;
mod closing;
pub(crate) mod model;
mod press;
mod set_up;
mod views;

pub use calendar::WorkCalendar;
pub use closing::{closing_on, closing_today, moved_closing};
pub use model::*;
pub use press::only_on_press;
pub(crate) use set_up::{open_runs, set_up_time};
pub use views::*;
