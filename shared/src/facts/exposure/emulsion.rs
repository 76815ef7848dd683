//! The stored fields of an emulsion. **Frozen** as [`crate::facts::Fact`] is.

use crate::bounds::is_name;
use crate::codec::Encode;
use serde::{Deserialize, Serialize};

/// What hardens an emulsion. **Frozen** names and order: they are stored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Default, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case")]
pub enum Family {
    /// Diazo.
    #[default]
    Diazo,
    /// Diazo and photopolymer together.
    DualCure,
    /// Pure photopolymer.
    Photopolymer,
}

impl Family {
    /// All, in the order in which they are offered.
    pub const ALL: [Self; 3] = [Self::Diazo, Self::DualCure, Self::Photopolymer];
}

/// A field of an emulsion. **Frozen** as [`crate::facts::Fact`] is.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum EmulsionField {
    /// The shop's name for it.
    Name(String),
    /// What hardens it.
    Family(Family),
    /// Solids content in percent.
    Solids(Option<u8>),
}

impl EmulsionField {
    /// Whether every value is within its limits; see [`crate::journal::JournalFact::in_bounds`].
    pub(crate) fn in_bounds(&self) -> bool {
        match self {
            Self::Name(name) => is_name(name),
            Self::Family(_) => true,
            Self::Solids(solids) => solids.is_none_or(|percent| percent <= 100),
        }
    }
}
