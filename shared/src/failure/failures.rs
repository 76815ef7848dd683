//! Failures as the facts leave them.

use super::{FailureFact, FailureField};
use crate::job::RunId;
use crate::journal::Subject;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// Something that failed.
#[derive(Clone, Debug, PartialEq, Default, Serialize, Deserialize)]
pub struct Failure {
    /// The run in which it happened; none until that fact has arrived.
    pub run: Option<RunId>,
    /// Anything else to know.
    pub notes: String,
    /// Wall time of its first fact.
    pub at: u64,
}

/// All failures.
#[derive(Clone, Debug, PartialEq, Default, Serialize, Deserialize)]
pub struct Failures {
    all: BTreeMap<Subject, Failure>,
}

impl Failures {
    /// A failure.
    pub fn get(&self, id: Subject) -> Option<&Failure> {
        self.all.get(&id)
    }

    pub(crate) fn take(&mut self, subject: Subject, at: u64, fact: &FailureFact) {
        match fact {
            FailureFact::Set(fields) => {
                let failure = self.all.entry(subject).or_insert_with(|| Failure { at, ..Failure::default() });
                for field in fields {
                    match field {
                        FailureField::Run(run) => failure.run = Some(*run),
                        FailureField::Notes(notes) => failure.notes.clone_from(notes),
                    }
                }
            }
        }
    }
}
