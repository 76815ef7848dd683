//! How stored values become bytes.
//!
//! A codec of our own instead of serde with the `postcard` crate: serde brings code for every type with a
//! way out at every field, which made the app a fifth larger. The [`Reader`] never stops half way, so that
//! reading a field needs no `?`.

mod postcard;

pub use postcard::{Encode, Reader, encode_number, from_bytes, to_bytes};
