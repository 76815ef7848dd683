//! The file that travels between devices in place of a server.

mod archive;
mod backup;

pub use archive::Source;
pub use backup::{Backup, BackupOut, BackupProblem, LARGEST_FILE, read_backup};
