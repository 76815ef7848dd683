//! The shop's screens (mesh, stencil, state and age), their exposure, and the reclaim bath.
//!
//! # Decisions
//!
//! - **Exposure.** An exposure time holds for one emulsion, mesh, lamp and distance. For any other
//!   combination the core returns the nearest known exposure, lists how it differs, and says that it must
//!   be tested. Distance is converted for a point lamp only; for tubes, panels and contact tables the core
//!   returns [`NoDistanceLaw`].
//! - **Mesh.** The open area is the one on the data sheet, or is computed from the opening on the data
//!   sheet; it is never computed from the nominal thread.
//! - **Reclaim bath.** A bath is compared with itself when it was fresh: the median of its first three
//!   batches, the median of its last three, and a Theil–Sen line through all of them. A batch belongs to
//!   the charge during which it began; deleting a charge joins it with the one before.

mod bath;
mod exposure;
mod forms;
mod inventory;
mod mesh;
pub(crate) mod model;
mod views;

pub use crate::facts::{
    AgeLimits, BatchTime, BathField, BurnStep, Coats, EmulsionField, Exposure, ExposureMethod, Family, GUIDE_STEPS,
    LampField, LampKind, MIN_GOAL, MeshCloth, MeshCount, MeshSheet, ScreenFact, ScreenField, ScreenState, StencilFact,
    StepTimes,
};
pub use bath::*;
pub use exposure::*;
pub use forms::*;
pub use inventory::*;
pub use mesh::*;
pub use model::*;
pub use views::*;
