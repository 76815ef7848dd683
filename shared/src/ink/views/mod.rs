//! What the screens of the ink bench show.

mod at_scale;
mod component_card;
mod label;
mod label_layout;
mod pot_card;
mod recipe_card;
mod run_ink;
mod shelf;
mod stock;
mod weigh_in;

pub use at_scale::{ScaleEntry, check_scale_entry, scale_decimals};
pub use component_card::{ComponentCard, StockChange, StockLine, UsedIn, component_card, stock_line};
pub use label::{HeldRevision, PotLabel, pot_label};
pub use label_layout::{BAND_WIDTH, LABEL_SIZE, LabelWords, PlacedText, label_layout};
pub use pot_card::{LedgerKind, LedgerLine, PotCard, PotRow, pot_card};
pub use recipe_card::{RecipeCard, RevisionRow, recipe_card};
pub use run_ink::{RunInk, ink_names, run_ink};
pub use shelf::{InkShelf, PotLine, RecipeLine, ink_shelf};
pub use stock::{LowReason, StockRow, StockView, ToBuy, stock_view};
pub use weigh_in::{WeighInView, WeighRow, weigh_in_view};
