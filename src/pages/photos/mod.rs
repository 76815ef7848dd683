//! Photos of any subject: `<Photos subject/>` shows them and adds more.

mod grid;
mod photo_url;
mod viewer;

pub use grid::Photos;
