//! The client's order: its garments, the number of pieces of each size, and when it is due.

mod defaults;
mod due;
mod fabric;
mod form;
mod job_card;
mod job_list;
mod lot;
mod order;
mod repeat;
mod size;

pub use defaults::{suggested_lot, suggested_run};
pub use due::Due;
pub use fabric::Fabric;
pub use form::{FormProblem, JobForm, LotForm, Problems, RunForm};
pub(crate) use form::{changed, keep, keep_number, keep_optional, name, required, required_name, shown};
pub use job_card::{JobCard, LotCard, RunCard, job_card};
pub(crate) use job_list::small;
pub use job_list::{JobList, JobRow, job_list};
pub use lot::Lot;
pub use order::{Job, JobId, LotId, RunId};
pub use repeat::repeat_order;
pub use size::{Size, SizePieces};
