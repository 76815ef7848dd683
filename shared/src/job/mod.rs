//! The client's order: what it is, which garments, how many of each size, and when it is due.

mod defaults;
mod form;
mod job_card;
mod job_list;
mod lot;
mod order;
mod repeat;

pub use crate::facts::{Fabric, Size, SizePieces};
pub use defaults::{suggested_lot, suggested_run};
pub use form::{JobForm, LotForm, RunForm};
pub use job_card::{JobCard, LotCard, RunCard, job_card};
pub use job_list::{JobList, JobRow, job_list};
pub use lot::Lot;
pub use order::Job;
pub use repeat::repeat_order;
