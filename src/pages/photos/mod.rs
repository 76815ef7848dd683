//! Photos of anything: `<Photos subject/>` shows those of a subject and takes more.

mod grid;
mod photo_url;
mod viewer;

pub use grid::Photos;
