//! What the page asks a worker to do, and the answer, as bytes. Both are of one build of the app.

use super::backup::Order;
use lastpull_core::codec::{Encode, from_bytes, to_bytes};
use lastpull_core::journal::Coverage;
use lastpull_core::time::WallTime;

/// What a worker is asked to do, in the database of this name.
#[derive(Encode)]
pub(in super::super) enum Task {
    /// Describe a file. `demo` is whether the shop here is the demo.
    Describe { database: String, demo: bool },
    /// Merge the file that it described.
    BringIn { now: WallTime },
    /// Take out the facts of an import.
    TakeBack { database: String, facts: Coverage },
    /// Make a backup file.
    Backup { database: String, order: Order },
    /// Fold everything that is stored, and save that.
    Refold { database: String },
    /// Pack the entries of the tail, and save the checkpoint.
    Compact { database: String },
}

/// The bytes of a result.
pub(super) fn to_answer<T: Encode, E: Encode>(result: &Result<T, E>) -> Vec<u8> {
    match result {
        Ok(value) => [vec![1], to_bytes(value)].concat(),
        Err(error) => [vec![0], to_bytes(error)].concat(),
    }
}

/// The result in these bytes; `None` if they are not one.
pub(in super::super) fn from_answer<T: Encode, E: Encode>(bytes: &[u8]) -> Option<Result<T, E>> {
    let (kind, rest) = bytes.split_first()?;
    if *kind == 1 { from_bytes(rest).map(Ok) } else { from_bytes(rest).map(Err) }
}
