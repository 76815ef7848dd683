//! How much ink runs need, and from which pots and components it comes.

mod experience;
mod make_again;
pub(crate) mod needs;
pub(crate) mod new_pot;
mod pot_runs;
mod print_use;
pub(crate) mod stock;
mod suggested;

pub use experience::{Experience, Similarity, experience};
pub use make_again::{MakeAgain, MakeRow, make_again};
pub use needs::{InkNeeded, best_revision, ink_needed, recipe_named};
pub use new_pot::{NewPot, RunForPot, Vessel, new_pot_for_revision, new_pot_for_run};
pub use pot_runs::{PotRun, likely_run, runs_for_pot};
pub use print_use::density_of;
pub use stock::stock_left;
pub use suggested::{BatchSplit, SCREEN_CHARGE, SuggestedBatch, suggested_batch};
