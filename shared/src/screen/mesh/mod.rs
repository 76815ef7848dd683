//! What a mesh holds, and how much ink a print takes.

mod ink_use;
mod volume;

pub use ink_use::{InkNeed, InkUse, InkUseForm, ink_need, measured_transfer};
pub use volume::{MeshVolume, MissingSheetValue, OpenArea, mesh_volume, open_area, open_share};
