//! Facts and how to undo them.

use super::Fact;
use crate::ids::Subject;

/// Facts to record together, and the facts that undo them.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct FactsWithUndo {
    /// The facts to record.
    pub facts: Vec<(Subject, Fact)>,
    /// The facts that undo them.
    pub undo: Vec<(Subject, Fact)>,
}
