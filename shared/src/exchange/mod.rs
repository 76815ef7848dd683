//! The backup file, which moves data between devices instead of a server.
//!
//! # Decisions
//!
//! - **Rescue.** Facts that could not be saved are put into the backup under a device id of their own. Once
//!   the file is written they leave the list of unsaved facts: saved on this device as well, they would
//!   count twice after an import of the file.

mod backup;
mod zip;

pub use backup::*;
pub use zip::*;
