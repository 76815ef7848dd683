//! What a mesh holds, and how much ink a print takes.

mod ink_use;
mod volume;

pub use ink_use::{InkNeed, InkUse, InkUseForm, ink_need, transfer_of};
pub use volume::{MeshVolume, OpenArea, SheetLacks, mesh_volume, open_area, open_share};
