//! What can happen to a screen. **Frozen** as [`crate::journal::Fact`] is.

use crate::journal::fact::{LIST, is_name};
use serde::{Deserialize, Serialize};

/// Something about a screen; the subject is the screen.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum ScreenFact {
    /// Fields of a screen were set; the screen comes to be with the first.
    Set(Vec<ScreenField>),
}

/// A field of a screen.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum ScreenField {
    /// What is written on the frame.
    Label(String),
}

impl ScreenFact {
    /// As [`crate::journal::Fact::in_bounds`].
    pub(crate) fn in_bounds(&self) -> bool {
        match self {
            Self::Set(fields) => {
                fields.len() <= LIST
                    && fields.iter().all(|field| match field {
                        ScreenField::Label(text) => is_name(text),
                    })
            }
        }
    }
}
