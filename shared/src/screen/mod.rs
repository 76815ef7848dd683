//! The shop's screens: mesh, stencil, state and age; exposing them; and the reclaim bath.

mod bath;
mod exposure;
mod forms;
mod inventory;
mod mesh;
pub(crate) mod model;
mod views;

pub use crate::facts::{
    AgeLimits, BatchTime, BathField, BurnStep, Coats, EmulsionField, Exposure, Family, Found, GUIDE_STEPS, LEAST_GOAL,
    LampField, LampKind, MeshCloth, MeshCount, MeshSheet, ScreenFact, ScreenField, ScreenState, StencilFact, StepTimes,
};
pub use bath::*;
pub use exposure::*;
pub use forms::*;
pub use inventory::*;
pub use mesh::*;
pub use model::*;
pub use views::*;
