//! Photos of any subject: `<Photos subject/>` shows them and adds more.

mod error_text;
mod grid;
mod photo_url;
mod viewer;

pub use error_text::photo_error_text;
pub use grid::Photos;
