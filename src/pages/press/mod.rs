//! The press: which run to print, its checks, the count, the summary.

mod checks;
mod count;
mod heading;
mod pick_run;
mod run;
mod summary;

pub use pick_run::PickRunPage;
pub use run::{RunBesideCount, RunPage};
