//! What can be told of a failure on the press. **Frozen** as [`crate::journal::Fact`] is.

use super::{FailureKind, Mark, Remedy};
use crate::job::{RunId, Size};
use crate::journal::Subject;
use crate::journal::fact::{LIST, PIECES, is_name, is_note};
use crate::pack::Pack;
use serde::{Deserialize, Serialize};

/// A fact about a failure; the subject is the failure.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Pack)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum FailureFact {
    /// Sets fields of a failure. The first such fact creates it.
    Set(Vec<FailureField>),
    /// Suspect pieces were inspected; negative to undo that. Spoiled pieces leave the run's count through a
    /// misprint of their own.
    Judged {
        /// Number of pieces.
        pieces: i32,
        /// Their size.
        size: Option<Size>,
        /// The result.
        verdict: Verdict,
        /// Who inspected them; `None` if the shop keeps no crew list.
        by: Option<String>,
    },
}

/// The result of inspecting a suspect piece. **Frozen** names and order: they are stored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, Pack)]
#[serde(rename_all = "snake_case")]
pub enum Verdict {
    /// Good.
    Good,
    /// Spoiled.
    Spoiled,
}

/// A field of a failure.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Pack)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum FailureField {
    /// The run in which it happened.
    Run(RunId),
    /// Free notes.
    Notes(String),
    /// The screen that failed.
    Screen(Option<Subject>),
    /// What failed.
    Kind(FailureKind),
    /// Where on the print it is.
    Mark(Option<Mark>),
    /// Number of pieces printed since the last one known to be good; `None` if nobody checked.
    Since(Option<u32>),
    /// The pieces that are suspect because of it.
    Suspects(Vec<Suspects>),
    /// The remedy that was chosen.
    Remedy(Option<Remedy>),
    /// The screen that replaces the failed one.
    Replacement(Option<Subject>),
    /// Who found it; `None` if the shop keeps no crew list.
    By(Option<String>),
}

/// Suspect pieces of one size.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, Pack)]
#[serde(deny_unknown_fields)]
pub struct Suspects {
    /// The size; `None` for pieces counted without a size.
    pub size: Option<Size>,
    /// Number of pieces.
    pub pieces: u32,
}

impl FailureFact {
    /// As [`crate::journal::Fact::in_bounds`].
    pub(crate) fn in_bounds(&self) -> bool {
        match self {
            Self::Set(fields) => fields.len() <= LIST && fields.iter().all(FailureField::in_bounds),
            Self::Judged { pieces, by, .. } => pieces.abs() <= PIECES && by.iter().all(|text| is_name(text)),
        }
    }
}

impl FailureField {
    fn in_bounds(&self) -> bool {
        match self {
            Self::Notes(text) => is_note(text),
            Self::By(by) => by.iter().all(|text| is_name(text)),
            Self::Mark(mark) => mark.is_none_or(Mark::in_bounds),
            Self::Since(since) => since.is_none_or(|pieces| pieces <= PIECES as u32),
            Self::Suspects(rows) => rows.len() <= LIST && rows.iter().all(|row| row.pieces <= PIECES as u32),
            Self::Run(_) | Self::Screen(_) | Self::Kind(_) | Self::Remedy(_) | Self::Replacement(_) => true,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::journal::Fact;

    #[test]
    fn the_json_names_of_failure_facts_are_frozen() {
        for (fact, json) in [
            (
                FailureFact::Set(vec![
                    FailureField::Kind(FailureKind::RegistrationDrift),
                    FailureField::Mark(Some(Mark { x: 120, y: 990 })),
                    FailureField::Since(Some(12)),
                    FailureField::Suspects(vec![Suspects { size: Some(Size::Xxl), pieces: 12 }]),
                ]),
                r#"{"failure":{"set":[{"kind":"registration_drift"},{"mark":{"x":120,"y":990}},{"since":12},{"suspects":[{"size":"xxl","pieces":12}]}]}}"#,
            ),
            (
                FailureFact::Set(vec![
                    FailureField::Remedy(Some(Remedy::BurnAgain)),
                    FailureField::Replacement(None),
                    FailureField::Screen(None),
                    FailureField::By(Some("Moss".into())),
                ]),
                r#"{"failure":{"set":[{"remedy":"burn_again"},{"replacement":null},{"screen":null},{"by":"Moss"}]}}"#,
            ),
            (
                FailureFact::Judged { pieces: -1, size: None, verdict: Verdict::Spoiled, by: None },
                r#"{"failure":{"judged":{"pieces":-1,"size":null,"verdict":"spoiled","by":null}}}"#,
            ),
        ] {
            let fact = Fact::Failure(fact);
            assert_eq!(fact.to_json().get(), json);
            assert_eq!(Fact::from_json(json), Some(fact));
        }
    }

    #[test]
    fn marks_stay_inside_the_art() {
        let outside = FailureFact::Set(vec![FailureField::Mark(Some(Mark { x: 1001, y: 0 }))]);
        assert!(!outside.in_bounds());
        assert_eq!(Mark::at(1.2, -0.1), Mark { x: 1000, y: 0 });
    }
}
