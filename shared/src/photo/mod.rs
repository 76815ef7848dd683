//! Photos of screens, prints and tests: which photos exist, what they show, and how their bytes are stored.
//!
//! # Decisions
//!
//! - The bytes of a photo are stored outside the journal, under their SHA-256 hash; a fact holds only the
//!   hash, the size in pixels and the number of bytes.
//! - Photos contain no metadata: neither place nor camera leaves the device with them.
//!
//! - [`JpegPhoto`]: the bytes of a photo, which are JPEG without metadata, of limited size, identified by
//!   [`PhotoId`](crate::ids::PhotoId)
//! - [`Photos`]: which photos show which subjects, folded from the facts
//! - [`PhotoStore`]: the contract of every store for the bytes, with its tests in [`contract`]
//! - [`Zoom`]: scale and position of a photo in its window

pub mod contract;
mod free_space;
mod jpeg;
mod memory;
pub(crate) mod model;
mod store;
mod zoom;

pub use crate::facts::{MAX_ACCEPTED_BYTES, PhotoFact};
pub use free_space::{LOW_PHOTO_COUNT, photos_fit, photos_that_fit};
pub use jpeg::{JpegPhoto, MAX_MADE_BYTES, MAX_MADE_SIDE, jpeg_has_no_metadata, strip_metadata};
pub use model::{Photo, PhotoTotal, Photos};
pub use store::{PhotoStore, STORED_VERSION, StoredPhotoInfo};
pub use zoom::{DoubleTap, Zoom};
