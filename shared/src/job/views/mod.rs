//! What the pages show of jobs.

mod job_card;
mod job_list;

pub use job_card::{JobCard, LotCard, RunCard, job_card};
pub use job_list::{JobList, JobRow, JobTexts, PrintSwatch, job_list, job_row, job_texts};
