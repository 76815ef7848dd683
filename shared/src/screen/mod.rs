//! The shop's screens (mesh, stencil, state and age), their exposure, and the reclaim bath.
//!
//! Wall times are milliseconds since 1970-01-01 UTC. Durations are milliseconds unless a name or a type
//! says otherwise.
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

mod age;
mod bath;
mod bath_chart;
mod bath_form;
mod bath_steps;
mod bath_trend;
mod bath_view;
mod board;
mod burn_step;
mod burn_steps;
mod card;
mod carried;
mod edge_form;
mod emulsion;
mod emulsion_form;
mod exposure;
mod exposure_desk;
mod exposure_distance;
mod exposure_for;
mod exposure_form;
mod fact;
mod form;
mod label_range;
mod labels;
mod lamp;
mod lamp_form;
mod mesh_ink_use;
mod mesh_rows;
mod mesh_sheet;
mod mesh_sheet_form;
mod mesh_volume;
mod moves;
mod needs;
mod new_screens;
mod on_press;
mod readiness;
mod screen_state;
mod screens;
mod standing;
mod stencil_fact;
mod stencil_home;
mod stencil_log;
mod step_wedge;
mod theil_sen;

pub use age::{AgeLimits, AgeWarning, age_warning};
pub use bath::{Batch, BatchTime, Bath, BathField, Charge, RECHARGE_AT};
pub use bath_chart::{BathChart, ChartBatch, bath_chart};
pub use bath_form::{BatchInForm, BatchOutForm, BatchTimeKind, BathForm, ChargeForm};
pub use bath_steps::{BathStep, forget_batch, put_in, take_out};
pub use bath_trend::{BathPace, BathPoint, BathTrend, ScreensLeft, bath_pace, bath_trend};
pub use bath_view::{BathQueue, BathView, ChargeRow, DoneBatch, InBath, bath_view};
pub use board::{ScreenBoard, ScreenFilter, ScreenGroup, ScreenRow, screen_board};
pub use burn_step::{BurnStep, StepTimes};
pub use burn_steps::{StepRow, burn_steps, steps_left};
pub use card::{ScreenCard, screen_card};
pub use carried::Carried;
pub use edge_form::EdgeForm;
pub use emulsion::{DAMPEST, DampNote, Emulsion, EmulsionField, Family, damp_note};
pub use emulsion_form::{EmulsionForm, EmulsionRow, emulsion_list};
pub use exposure::{Coats, Exposure, KnownExposure};
pub use exposure_desk::{ExposurePick, RoomDamp, known_cloths, known_coats, room_damp};
pub use exposure_distance::{EdgeLight, NoDistanceLaw, edge_light, time_at_distance};
pub use exposure_for::{Difference, ExposureAnswer, ExposureAsked, ExposureRow, exposure_for, exposure_list};
pub use exposure_form::{ExposureForm, ExposureProblems, ExposureRefused, FoundKind, FoundTime, check_goal};
pub use fact::{ScreenFact, ScreenField};
pub use form::{ScreenForm, ScreenRoomForm};
pub(crate) use form::{fields_of, free_label};
pub use label_range::{MOST_LABELS, expand_labels};
pub(crate) use labels::with_label;
pub use labels::{LabelMatch, match_labels, screens_of};
pub use lamp::{Lamp, LampField, LampKind};
pub use lamp_form::{LampForm, LampRow, lamp_list};
pub use mesh_ink_use::{InkNeed, InkUse, InkUseForm, ink_need, transfer_of};
pub use mesh_rows::{MeshRow, mesh_rows};
pub use mesh_sheet::{MeshCloth, MeshCount, MeshSheet};
pub use mesh_sheet_form::MeshSheetForm;
pub use mesh_volume::{MeshVolume, OpenArea, SheetLacks, mesh_volume, open_area, open_share};
pub(crate) use moves::moved;
pub use moves::{move_facts, next_states, step_done, tick_facts};
pub use needs::{NeedScreen, NeedStep, RunNeeds, needs_of, screen_needs};
pub use new_screens::{new_labels, sheet_to_take};
pub use on_press::{OffPress, facts_on_end, facts_on_finish, facts_on_start, keeps_ready, not_ready, off_press};
pub use readiness::{Readiness, StepSum, readiness, readiness_of};
pub use screen_state::ScreenState;
pub use screens::{Screen, ScreenChange, ScreenEvent, Screens};
pub use standing::{as_it_stands, latest_undone, step_undone, undo_of};
pub use stencil_fact::StencilFact;
pub use stencil_home::{StencilHome, stencil_home, waiting_screens};
pub use stencil_log::StencilLog;
pub use step_wedge::{
    CALCULATOR_COLUMNS, Found, GUIDE_STEPS, LEAST_GOAL, NoReading, TestAdvice, TestReading, from_columns,
    from_step_guide,
};
