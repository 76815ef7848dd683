//! The forms about screens, exposure and the bath.

mod bath;
mod edge;
mod emulsion;
mod exposure;
mod lamp;
mod mesh_sheet;
mod screen;

pub use bath::{BatchInForm, BatchOutForm, BatchTimeKind, BathForm, ChargeForm};
pub use edge::FrameSizeForm;
pub use emulsion::{EmulsionForm, EmulsionRow, emulsion_list};
pub use exposure::{ExposureForm, ExposureMethodKind, ExposureProblems, ExposureRefused, ExposureResult, check_goal};
pub use lamp::{LampForm, LampRow, lamp_list};
pub use mesh_sheet::MeshSheetForm;
pub use screen::{ScreenForm, ScreenSettingsForm};
pub(crate) use screen::{fields_of, free_label};
