//! What can be told of a failure on the press. **Frozen** as [`crate::journal::Fact`] is.

use crate::job::RunId;
use crate::journal::fact::{LIST, is_note};
use serde::{Deserialize, Serialize};

/// Something about a failure; the subject is the failure.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum FailureFact {
    /// Fields of it were set; it comes to be with the first.
    Set(Vec<FailureField>),
}

/// A field of a failure.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum FailureField {
    /// The run in which it happened.
    Run(RunId),
    /// Anything else to know.
    Notes(String),
}

impl FailureFact {
    /// As [`crate::journal::Fact::in_bounds`].
    pub(crate) fn in_bounds(&self) -> bool {
        match self {
            Self::Set(fields) => {
                fields.len() <= LIST
                    && fields.iter().all(|field| match field {
                        FailureField::Notes(text) => is_note(text),
                        FailureField::Run(_) => true,
                    })
            }
        }
    }
}
