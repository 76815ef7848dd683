//! The shop's screens: mesh, stencil, state and age; exposing them; and the reclaim bath.

mod bath;
mod bath_form;
mod bath_trend;
mod bath_view;
mod emulsion;
mod emulsion_form;
mod exposure;
mod exposure_distance;
mod exposure_for;
mod exposure_form;
mod fact;
mod lamp;
mod lamp_form;
mod mesh_ink_use;
mod mesh_sheet;
mod mesh_sheet_form;
mod mesh_volume;
mod screens;
mod stencil_fact;
mod stencil_log;
mod step_wedge;
mod theil_sen;

pub use bath::{Batch, BatchTime, Bath, BathField, Charge, RECHARGE_AT};
pub use bath_form::{BatchInForm, BatchOutForm, BatchTimeKind, BathForm, ChargeForm};
pub use bath_trend::{BathPace, BathPoint, BathTrend, ScreensLeft, bath_pace, bath_trend};
pub use bath_view::{BathQueue, BathView, ChargeRow, DoneBatch, InBath, bath_view};
pub use emulsion::{DAMPEST, DampNote, Emulsion, EmulsionField, Family, damp_note};
pub use emulsion_form::{EmulsionForm, EmulsionRow, emulsion_list};
pub use exposure::{Coats, Exposure, KnownExposure};
pub use exposure_distance::{EdgeLight, NoDistanceLaw, edge_light, time_at_distance};
pub use exposure_for::{Difference, ExposureAnswer, ExposureAsked, ExposureRow, exposure_for, exposure_list};
pub use exposure_form::{ExposureForm, ExposureProblems, ExposureRefused, FoundKind, FoundTime, check_goal};
pub use fact::{ScreenFact, ScreenField};
pub use lamp::{Lamp, LampField, LampKind};
pub use lamp_form::{LampForm, LampRow, lamp_list};
pub use mesh_ink_use::{InkNeed, InkUse, InkUseForm, ink_need, transfer_of};
pub use mesh_sheet::{MeshCloth, MeshCount, MeshSheet};
pub use mesh_sheet_form::MeshSheetForm;
pub use mesh_volume::{MeshVolume, OpenArea, SheetLacks, mesh_volume, open_area, open_share};
pub use screens::{Screen, Screens};
pub use stencil_fact::StencilFact;
pub use stencil_log::StencilLog;
pub use step_wedge::{
    CALCULATOR_COLUMNS, Found, GUIDE_STEPS, LEAST_GOAL, NoReading, TestAdvice, TestReading, from_columns,
    from_step_guide,
};
