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

pub use batch_size::{BatchSizeForm, BatchTarget, RequestedBatch, batch_targets};
pub use component::ComponentForm;
pub use cover::CoverForm;
pub use curve::CurveForm;
pub use drawdown::{DrawdownForm, LayerKind, layer_kind};
pub use event_note::EventNoteForm;
pub use pot::{PotForm, ScaleForm};
pub use pour::{PourForm, RemovalForm, ScaleReadings, headroom_of, scale_readings};
pub use poured_correction::{POURED_CORRECTION_FIELDS, PouredCorrectionForm, poured_in};
pub use print_use::PrintForm;
pub use reading::ReadingForm;
pub use recipe::{PartForm, RecipeForm, RecipeProblems, ValidRecipe};
pub use stock::StockForm;
