//! The shop's screens: mesh, stencil, state and age; exposing them; and the reclaim bath.

mod age;
mod bath;
mod bath_chart;
mod bath_form;
mod bath_steps;
mod bath_trend;
mod bath_view;
mod board;
mod burn_steps;
mod card;
mod carried;
mod edge_form;
mod emulsion;
mod emulsion_form;
mod exposure_desk;
mod exposure_distance;
mod exposure_for;
mod exposure_form;
mod form;
mod known_exposure;
mod label_range;
mod labels;
mod lamp;
mod lamp_form;
mod mesh_ink_use;
mod mesh_rows;
mod mesh_sheet_form;
mod mesh_volume;
mod moves;
mod needs;
mod new_screens;
mod on_press;
mod readiness;
mod screens;
mod standing;
mod stencil_home;
mod stencil_log;
mod step_wedge;
mod theil_sen;

pub use crate::facts::{
    AgeLimits, BatchTime, BathField, BurnStep, Coats, EmulsionField, Exposure, Family, Found, GUIDE_STEPS, LampField,
    LampKind, MeshCloth, MeshCount, MeshSheet, ScreenFact, ScreenField, ScreenState, StencilFact, StepTimes,
};
pub use age::{AgeWarning, age_warning};
pub use bath::{Batch, Bath, Charge, RECHARGE_AT};
pub use bath_chart::{BathChart, ChartBatch, bath_chart};
pub use bath_form::{BatchInForm, BatchOutForm, BatchTimeKind, BathForm, ChargeForm};
pub use bath_steps::{BathStep, forget_batch, put_in, take_out};
pub use bath_trend::{BathPace, BathPoint, BathTrend, ScreensLeft, bath_pace, bath_trend};
pub use bath_view::{BathQueue, BathView, ChargeRow, DoneBatch, InBath, bath_view};
pub use board::{ScreenBoard, ScreenFilter, ScreenGroup, ScreenRow, screen_board};
pub use burn_steps::{StepRow, burn_steps, steps_left};
pub use card::{ScreenCard, screen_card};
pub use carried::Carried;
pub use edge_form::EdgeForm;
pub use emulsion::{DAMPEST, DampNote, Emulsion, damp_note};
pub use emulsion_form::{EmulsionForm, EmulsionRow, emulsion_list};
pub use exposure_desk::{ExposurePick, RoomDamp, known_cloths, known_coats, room_damp};
pub use exposure_distance::{EdgeLight, NoDistanceLaw, edge_light, time_at_distance};
pub use exposure_for::{Difference, ExposureAnswer, ExposureAsked, ExposureRow, exposure_for, exposure_list};
pub use exposure_form::{ExposureForm, ExposureProblems, ExposureRefused, FoundKind, FoundTime, check_goal};
pub use form::{ScreenForm, ScreenRoomForm};
pub(crate) use form::{fields_of, free_label};
pub use known_exposure::KnownExposure;
pub use label_range::{MOST_LABELS, expand_labels};
pub(crate) use labels::with_label;
pub use labels::{LabelMatch, match_labels, screens_of};
pub use lamp::Lamp;
pub use lamp_form::{LampForm, LampRow, lamp_list};
pub use mesh_ink_use::{InkNeed, InkUse, InkUseForm, ink_need, transfer_of};
pub use mesh_rows::{MeshRow, mesh_rows};
pub use mesh_sheet_form::MeshSheetForm;
pub use mesh_volume::{MeshVolume, OpenArea, SheetLacks, mesh_volume, open_area, open_share};
pub(crate) use moves::moved;
pub use moves::{move_facts, next_states, step_done, tick_facts};
pub use needs::{NeedScreen, NeedStep, RunNeeds, needs_of, screen_needs};
pub use new_screens::{new_labels, sheet_to_take};
pub use on_press::{OffPress, facts_on_end, facts_on_finish, facts_on_start, keeps_ready, not_ready, off_press};
pub use readiness::{Readiness, StepSum, readiness, readiness_of};
pub use screens::{Screen, ScreenChange, ScreenEvent, Screens};
pub use standing::{as_it_stands, latest_undone, step_undone, undo_of};
pub use stencil_home::{StencilHome, stencil_home, waiting_screens};
pub use stencil_log::StencilLog;
pub use step_wedge::{
    CALCULATOR_COLUMNS, LEAST_GOAL, NoReading, TestAdvice, TestReading, from_columns, from_step_guide,
};
