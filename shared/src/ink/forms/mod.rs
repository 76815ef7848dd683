//! The forms of the ink bench.

mod batch_size;
mod component;
mod cover;
mod curve;
mod drawdown;
pub(crate) mod event_note;
mod pot;
mod pour;
mod poured_correction;
mod print_use;
mod reading;
mod recipe;
mod stock;

pub use batch_size::{MakeFor, MakeForm, MakeSize, made_for};
pub use component::ComponentForm;
pub use cover::CoverForm;
pub use curve::CurveForm;
pub use drawdown::{DrawdownForm, LayKind, kind_of};
pub use event_note::RemarkForm;
pub use pot::{PotForm, ScaleForm};
pub use pour::{PourForm, TakeForm, on_scale, room_of};
pub use poured_correction::{WAY_FIELDS, WayForm, poured_in};
pub use print_use::PrintForm;
pub use reading::ReadingForm;
pub use recipe::{CheckedRecipe, PartForm, RecipeForm, RecipeProblems};
pub use stock::StockForm;
