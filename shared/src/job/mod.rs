//! The client's order: its garments, the number of pieces of each size, and when it is due.

mod defaults;
mod job_form;
mod lot_form;
pub(crate) mod model;
mod repeat;
mod views;

pub use crate::facts::{Fabric, Size, SizePieces};
pub use defaults::{NewRun, client_names, fabric_of_garment, garment_names, new_run, suggested_lot, suggested_run};
pub use job_form::JobForm;
pub use lot_form::LotForm;
pub use model::*;
pub use repeat::repeat_order;
pub use views::*;
