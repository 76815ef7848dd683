//! The journal: facts appended by devices, of which the shop is a deterministic fold.
//!
//! It knows no particular fact: everything is generic over a [`JournalFact`].
//!
//! - An [`Entry`] is a fact with who, which number, and when.
//! - [`Stamp`] and [`HybridClock`] give the order, [`Coverage`] says which facts are here and missing.
//! - [`Journal`] is a set of entries; merging is set union: commutative, associative, idempotent.
//! - [`record`] and [`segment`] are the frozen bytes on disk; [`checkpoint`] saves folding again.
//! - [`RawJournal::salvage`] reads what a damaged journal still holds.
//! - [`Storage`] is the promise every backend keeps, and [`contract`] the tests that hold it to it.

pub mod checkpoint;
pub mod contract;
mod coverage;
mod entry;
mod fact;
mod memory;
pub mod record;
mod salvage;
pub mod segment;
mod set;
mod stamp;
mod storage;

pub use checkpoint::Checkpoint;
pub use coverage::{Coverage, Gap};
pub use entry::{Entry, EntryProblem, OrderKey};
pub use fact::JournalFact;
pub use memory::MemoryStorage;
pub use salvage::Salvage;
pub use set::{Absorbed, Conflict, Journal};
pub use stamp::{FarAhead, HybridClock, Stamp};
pub use storage::{
    Draft, Head, Opened, RawJournal, Storage, StorageFault, StoredValue, adopt_into, assign_sequence, withdraw_from,
};
