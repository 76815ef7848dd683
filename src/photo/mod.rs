//! Photos of anything: `<Photos subject/>` shows those of a subject and takes more.

mod grid;
mod shown;
mod view;

pub use grid::Photos;
