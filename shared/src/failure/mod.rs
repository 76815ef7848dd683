//! What goes wrong on the press, and what it costs.

mod fact;
mod failures;

pub use fact::{FailureFact, FailureField};
pub use failures::{Failure, Failures};
