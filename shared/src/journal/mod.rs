//! The journal: everything that happens is a [`Fact`] appended by one device, and the shop's state is a
//! deterministic fold over all facts.
//!
//! - An [`Entry`] is a fact with its device, sequence number, stamp and subject.
//! - [`Stamp`] and [`HybridClock`] define the order; [`Coverage`] tells which facts are present and missing.
//! - [`Journal`] is a set of entries; merging is set union: commutative, associative, idempotent.
//! - [`record`] and [`segment`] are the frozen bytes on disk; a [`checkpoint`] saves folding again.
//! - [`Storage`] is the contract of every backend, and [`contract`] its tests.
//!
//! # Decisions
//!
//! - **Numbers and stamps are assigned inside the storage transaction**, so that two tabs cannot collide. A
//!   worker gets them together with the head they build on and stores them only if that is the stored head.
//! - **Unknown facts** of a newer version are kept byte for byte and travel on. A known fact with an unknown
//!   field counts as unknown, too (`deny_unknown_fields`).
//! - **Frozen bytes**: records, segments, [`Head`] and the lines of `journal.ndjson`. Each begins with a
//!   version; a change is a new version with its own decoder next to the old one. Tests hold the literal
//!   bytes.
//! - **The checkpoint is a cache.** Raise [`checkpoint::VERSION`] whenever anything inside the folded shop
//!   changes shape or meaning; the journal is then folded again once.
//! - **Clocks.** A device follows another one's clock at most an hour ahead of its own and reports it. A
//!   device whose clock runs years ahead wins every field it writes until that date; this limit is known.

pub mod checkpoint;
pub mod contract;
mod coverage;
mod entry;
pub(crate) mod fact;
mod memory;
pub mod record;
pub mod segment;
mod set;
mod stamp;
mod storage;

pub use checkpoint::Checkpoint;
pub use coverage::{Coverage, Gap};
pub use entry::{DeviceId, Entry, EntryProblem, OrderKey, Subject};
pub use fact::{Fact, JobField, LotField, RunField};
pub use memory::MemoryStorage;
pub use set::{Absorbed, Conflict, Journal};
pub use stamp::{FarAhead, HybridClock, Stamp};
pub use storage::{Draft, Head, Opened, Storage, StorageFault, allocate};
