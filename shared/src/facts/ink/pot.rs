//! The stored fields of a pot. **Frozen** as [`crate::facts::Fact`] is.

use super::component::is_storable_weight;
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
    /// The name written on it.
    Name(String),
    /// The revision it is weighed by.
    Revision(Option<Subject>),
    /// Size of the batch.
    Size(Option<BatchSize>),
    /// Capacity, filled to where it can still be stirred.
    Capacity(Option<Grams>),
    /// Weight of the empty pot; `None` if the scale is zeroed with the pot on it.
    Tare(Option<Grams>),
    /// The run it is for.
    Run(Option<RunId>),
    /// Free note.
    Note(String),
    /// Whether it is closed: empty and washed out.
    Closed(bool),
}

impl PotField {
    /// Whether every value is within its limits; see [`crate::journal::JournalFact::in_bounds`].
    pub(crate) fn in_bounds(&self) -> bool {
        match self {
            Self::Name(text) => is_name(text),
            Self::Note(text) => is_note(text),
            Self::Size(size) => size.is_none_or(BatchSize::in_bounds),
            Self::Capacity(weight) | Self::Tare(weight) => weight.is_none_or(is_storable_weight),
            Self::Revision(_) | Self::Run(_) | Self::Closed(_) => true,
        }
    }
}

/// Size of a batch. **Frozen**: stored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum BatchSize {
    /// Weight of everything in the pot.
    Whole(Grams),
    /// Weight of the ink alone; parts on top are added to it.
    Ink(Grams),
}

impl BatchSize {
    /// Whether every value is within its limits; see [`crate::journal::JournalFact::in_bounds`].
    pub(crate) fn in_bounds(self) -> bool {
        let (Self::Whole(weight) | Self::Ink(weight)) = self;
        is_storable_weight(weight)
    }

    /// Weight of everything in the pot, at most [`Grams::MOST`].
    ///
    /// ```
    /// # use lastpull_core::ink::{BatchSize, Part, Share};
    /// # use lastpull_core::units::Grams;
    /// # use uuid::Uuid;
    /// let part = |id, percent, on_top| {
    ///     Part { component: Uuid::from_u128(id), share: Share::from_percent(percent), on_top }
    /// };
    /// // The published example: 500 g of ink, with 10 % and 3 % on top.
    /// let recipe = [part(1, 100.0, false), part(2, 10.0, true), part(3, 3.0, true)];
    /// let size = Grams::from_grams(500.0);
    /// assert_eq!(BatchSize::Ink(size).whole(&recipe), Grams::from_grams(565.0));
    /// assert_eq!(BatchSize::Whole(size).whole(&recipe), size);
    /// ```
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
