//! The journal: facts appended by devices, of which the shop is a deterministic fold.
//!
//! It knows no particular fact: everything is generic over a [`JournalFact`].
//!
//! - An [`Entry`] is a fact with who, which number, and when.
//! - [`Stamp`] and [`HybridClock`] give the order, [`Coverage`] says which facts are here and missing.
//! - [`Journal`] is a set of entries; merging is set union: commutative, associative, idempotent. A [`Fork`] is a device
//!   id under which two devices counted on: both lines are kept. [`merge`](merge()) takes entries into a storage.
//! - [`Packed`] holds the entries of a whole journal in memory.
//! - [`record`] and [`segment`] are the frozen bytes on disk; [`checkpoint`] saves folding again.
//! - [`RawJournal::salvage`] reads what a damaged journal still holds.
//! - [`Storage`] is the promise every backend keeps, and [`contract`] the tests that hold it to it.

pub mod checkpoint;
pub mod contract;
mod coverage;
mod entry;
mod fact;
mod fork;
mod memory;
mod merge;
mod packed;
pub mod record;
mod salvage;
pub mod segment;
mod set;
mod stamp;
mod storage;

pub use checkpoint::Checkpoint;
pub use coverage::{Coverage, Gap, TooMany};
pub use entry::{Entry, EntryProblem, OrderKey};
pub use fact::JournalFact;
pub use fork::{Fork, is_same_family};
pub use memory::MemoryStorage;
pub use merge::{Folding, MergeProblem, Merged, is_plain, merge};
pub use packed::{Packed, Packer, by_number, in_fold_order};
pub use salvage::Salvage;
pub use set::{Absorbed, Journal};
pub use stamp::{HybridClock, Stamp};
pub use storage::{
    Adopted, Draft, Head, Opened, RawJournal, Storage, StorageFault, StoredValue, adopt_into, assign_sequence,
    withdraw_from,
};
