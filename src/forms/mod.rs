//! Forms: fields bound to a struct of texts, checked and saved on submit.

mod bind;
mod crew_picker;
mod debounced;
mod draft;
mod field;
mod record;
mod save_bar;
mod submit;

pub use bind::Bound;
pub(crate) use bind::{bound, field_name};
pub use crew_picker::CrewPicker;
pub use debounced::Debounced;
pub use draft::Draft;
pub use field::{Field, Kind, TextArea, problem_text};
pub use record::{delete, set};
pub use save_bar::SaveBar;
pub use submit::{Facts, FormSubmit, Validated, focus_problem, submit_dialog};
