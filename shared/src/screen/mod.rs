//! The shop's screens: mesh, stencil, state and age; exposing them; and the reclaim bath.

mod fact;
mod mesh_sheet;
mod mesh_sheet_form;
mod screens;
mod stencil_fact;
mod stencil_log;

pub use fact::{ScreenFact, ScreenField};
pub use mesh_sheet::{MeshCloth, MeshCount, MeshSheet};
pub use mesh_sheet_form::MeshSheetForm;
pub use screens::{Screen, Screens};
pub use stencil_fact::StencilFact;
pub use stencil_log::StencilLog;
