//! Photos of screens, prints and tests: which there are and what they show. Their bytes are kept by
//! their hash beside the journal.
//!
//! - [`JpegPhoto`] is a photo's bytes: JPEG without metadata, of bounded size, named by [`PhotoId`]
//! - [`Photos`] is what the facts say: which photos show what
//! - [`PhotoStore`] is the promise of every place that keeps the bytes, [`contract`] its tests
//! - [`Zoom`] is how a photo lies in its window

pub mod contract;
mod jpeg;
mod memory;
pub(crate) mod model;
mod room;
mod store;
mod zoom;

pub use crate::facts::{LARGEST_TAKEN, PhotoFact};
pub use jpeg::{JpegPhoto, LARGEST_MADE, LONGEST_SIDE, jpeg_has_no_metadata, strip_metadata};
pub use model::{Photo, PhotoTotal, Photos};
pub use room::{FEW_MORE, photos_fit, photos_that_fit};
pub use store::{Card, PhotoStore, STORED_VERSION};
pub use zoom::{DoubleTouch, Zoom};
