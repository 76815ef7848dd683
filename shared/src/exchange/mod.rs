//! The backup file, which moves data between devices instead of a server.
//!
//! # Decisions
//!
//! - **Rescue.** Facts that could not be saved are put into the backup under a device id of their own, and keep that
//!   device and number if they are saved on this device after all: an import of the file then counts nothing twice.
//!   They stay in the list of unsaved facts until the user says that the file is there.
//! - **Look first.** A file is read and described before it is merged, and what a merge brought can be taken back.

mod backup;
mod import_record;
mod preview;
mod zip;

pub use backup::*;
pub use import_record::ImportRecord;
pub use preview::*;
pub use zip::*;
