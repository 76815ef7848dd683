//! What can fail on the press, and what is done about it. **Frozen** as [`crate::facts::Fact`] is.

use super::{MisprintCause, Size};
use crate::bounds::{LIST, PIECES, is_name, is_note};
use crate::codec::Encode;
use crate::ids::{RunId, Subject};
use serde::{Deserialize, Serialize};

/// A fact about a failure; the subject is the failure.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Encode)]
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
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case")]
pub enum Verdict {
    /// Good.
    Good,
    /// Spoiled.
    Spoiled,
}

/// A field of a failure.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Encode)]
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
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, Encode)]
#[serde(deny_unknown_fields)]
pub struct Suspects {
    /// The size; `None` for pieces counted without a size.
    pub size: Option<Size>,
    /// Number of pieces.
    pub pieces: u32,
}

impl FailureFact {
    /// Whether every value is within its limits; see [`crate::journal::JournalFact::in_bounds`].
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

/// The kind of a failure. **Frozen** names and order: they are stored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case")]
pub enum FailureKind {
    /// A hole in the stencil that lets ink through.
    Pinhole,
    /// Mesh that lets no ink through: dried ink, lint.
    Clog,
    /// A spot on every print.
    Spot,
    /// The stencil comes off.
    Breakdown,
    /// The mesh tore.
    Tear,
    /// An old image is printed along with the new one.
    Ghost,
    /// The registration drifts.
    RegistrationDrift,
    /// Anything else.
    Other,
}

impl FailureKind {
    /// All kinds, in the order in which they are offered.
    pub const ALL: [Self; 8] = [
        Self::Pinhole,
        Self::Clog,
        Self::Spot,
        Self::Breakdown,
        Self::Tear,
        Self::Ghost,
        Self::RegistrationDrift,
        Self::Other,
    ];

    /// The misprint cause under which its spoiled pieces are counted.
    pub fn misprint_cause(self) -> MisprintCause {
        match self {
            Self::Pinhole | Self::Spot => MisprintCause::Pinhole,
            Self::RegistrationDrift => MisprintCause::Registration,
            Self::Clog | Self::Breakdown | Self::Tear | Self::Ghost | Self::Other => MisprintCause::Screen,
        }
    }
}

/// What is done about a failure. **Frozen** names and order: they are stored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case")]
pub enum Remedy {
    /// Tape over it.
    Tape,
    /// Block it out.
    BlockOut,
    /// Clean the screen.
    Clean,
    /// Burn a new screen.
    BurnAgain,
}

impl Remedy {
    /// All remedies, the quickest first.
    pub const ALL: [Self; 4] = [Self::Tape, Self::BlockOut, Self::Clean, Self::BurnAgain];
}

/// A place on the print, in thousandths of the art's box: from its left edge, as seen by somebody looking
/// at the print, and from its top edge.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, Encode)]
#[serde(deny_unknown_fields)]
pub struct Mark {
    /// From the left edge.
    pub x: u16,
    /// From the top edge.
    pub y: u16,
}

/// One of the nine equal parts of a box.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct GridCell {
    /// From the left, 0 to 2.
    pub column: usize,
    /// From the top, 0 to 2.
    pub row: usize,
}

impl Mark {
    /// The mark at a share of the width and height; values outside 0 to 1 are clamped.
    pub fn at(x: f64, y: f64) -> Self {
        let permille = |share: f64| (share.clamp(0.0, 1.0) * 1000.0).round() as u16;
        Self { x: permille(x), y: permille(y) }
    }

    /// The ninth of the box it is in.
    pub fn grid_cell(self) -> GridCell {
        let third = |permille: u16| usize::from(permille.min(999) / 334);
        GridCell { column: third(self.x), row: third(self.y) }
    }

    /// Moved by hundredths of the width and height, but kept inside the box.
    pub fn nudged(self, right: i32, down: i32) -> Self {
        let by = |permille: u16, step: i32| (i32::from(permille) + step * 10).clamp(0, 1000) as u16;
        Self { x: by(self.x, right), y: by(self.y, down) }
    }

    /// Whether every value is within its limits; see [`crate::journal::JournalFact::in_bounds`].
    pub(crate) fn in_bounds(self) -> bool {
        self.x <= 1000 && self.y <= 1000
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::facts::Fact;
    use crate::journal::JournalFact;

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

    #[test]
    fn a_mark_is_in_one_of_nine_parts_and_stays_inside() {
        for (x, y, column, row) in [(0, 0, 0, 0), (333, 334, 0, 1), (667, 668, 1, 2), (1000, 1000, 2, 2)] {
            assert_eq!(Mark { x, y }.grid_cell(), GridCell { column, row });
        }
        assert_eq!(Mark { x: 995, y: 3 }.nudged(1, -1), Mark { x: 1000, y: 0 });
        assert_eq!(Mark { x: 500, y: 500 }.nudged(-2, 5), Mark { x: 480, y: 550 });
    }
}
