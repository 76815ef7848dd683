//! Jobs and garment lots as the facts leave them.

mod job;
mod lot;

pub use job::Job;
pub use lot::Lot;
pub(crate) use lot::garment_id;
