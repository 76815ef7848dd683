//! The file that travels between devices in place of a server.

mod archive;
mod backup;

pub use backup::{BackupProblem, LARGEST_FILE, read_backup, write_backup};
