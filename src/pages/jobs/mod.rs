//! Jobs, their garment lots and runs: the list, the job, the forms.

mod job;
mod job_form;
mod list;
mod lot_form;
mod lot_section;
mod run_form;

pub use job::JobPage;
pub use job_form::JobFormPage;
pub use list::JobsPage;
pub use lot_form::LotFormPage;
pub use run_form::RunFormPage;
