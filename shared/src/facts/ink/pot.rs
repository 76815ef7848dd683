//! The stored fields of a pot. **Frozen** as [`crate::facts::Fact`] is.

use super::component::is_kept;
use super::recipe::Part;
use crate::bounds::{is_name, is_note};
use crate::codec::Encode;
use crate::ids::{RunId, Subject};
use crate::units::Grams;
use serde::{Deserialize, Serialize};

/// A field of a pot. **Frozen** as [`crate::facts::Fact`] is.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum PotField {
    /// What is written on it.
    Name(String),
    /// The revision it is weighed by.
    Revision(Option<Subject>),
    /// How much of it.
    Size(Option<BatchSize>),
    /// How much it holds, filled to where it can still be stirred.
    Capacity(Option<Grams>),
    /// What it weighs empty; none where the scale is zeroed with the pot on it.
    Tare(Option<Grams>),
    /// The run it is for.
    Run(Option<RunId>),
    /// Anything else.
    Note(String),
    /// Whether it is done with: empty, washed out.
    Closed(bool),
}

impl PotField {
    /// As [`crate::facts::Fact::in_bounds`].
    pub(crate) fn in_bounds(&self) -> bool {
        match self {
            Self::Name(text) => is_name(text),
            Self::Note(text) => is_note(text),
            Self::Size(size) => size.is_none_or(BatchSize::in_bounds),
            Self::Capacity(weight) | Self::Tare(weight) => weight.is_none_or(is_kept),
            Self::Revision(_) | Self::Run(_) | Self::Closed(_) => true,
        }
    }
}

/// How large a batch is to be. **Frozen**: stored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum BatchSize {
    /// All that will be in the pot.
    Whole(Grams),
    /// The ink alone; what is on top comes to it.
    Ink(Grams),
}

impl BatchSize {
    /// As [`crate::facts::Fact::in_bounds`].
    pub(crate) fn in_bounds(self) -> bool {
        let (Self::Whole(weight) | Self::Ink(weight)) = self;
        is_kept(weight)
    }

    /// What the whole pot will weigh, no more than a weight can be.
    pub fn whole(self, parts: &[Part]) -> Grams {
        let sum = |on_top| -> i64 {
            let of = parts.iter().filter(|part| part.on_top == on_top);
            of.map(|part| i64::from(part.share.billionths())).sum()
        };
        let whole = match self {
            Self::Whole(weight) => weight,
            Self::Ink(weight) => {
                let (ink, top) = (sum(false) as f64, sum(true) as f64);
                let more = if ink > 0.0 { weight.milligrams() as f64 * top / ink } else { 0.0 };
                weight.saturating_add(Grams::from_milligrams(more.round() as i64))
            }
        };
        whole.min(Grams::MOST)
    }
}
