//! The file that travels between devices in place of a server.

mod backup;
mod zip;

pub use backup::*;
pub use zip::*;
