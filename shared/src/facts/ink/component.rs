//! The stored fields of a component. **Frozen** as [`crate::facts::Fact`] is.

use super::share::Share;
use crate::bounds::{is_name, is_note};
use crate::codec::Encode;
use crate::colour::Colour;
use crate::units::Grams;
use serde::{Deserialize, Serialize};

/// What a component is for. **Frozen** names and order: they are stored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Default, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case")]
pub enum ComponentKind {
    /// What carries the colour.
    #[default]
    Base,
    /// What gives it.
    Pigment,
    /// What changes how it prints, dries or holds.
    Additive,
}

impl ComponentKind {
    /// All, in the order they are offered.
    pub const ALL: [Self; 3] = [Self::Base, Self::Pigment, Self::Additive];
}

/// Whether what lies below shows through. **Frozen** names and order: they are stored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Default, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case")]
pub enum Hiding {
    /// It shows through.
    #[default]
    Transparent,
    /// It is hidden.
    Opaque,
}

/// A field of a component. **Frozen** as [`crate::facts::Fact`] is.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum ComponentField {
    /// What the shop calls it.
    Name(String),
    /// What it is for.
    Kind(ComponentKind),
    /// Its colour, as a screen shows it.
    Colour(Option<Colour>),
    /// Whether it hides.
    Hiding(Hiding),
    /// Milligrams a cubic centimetre.
    Density(Option<u16>),
    /// Hundredths of the shop's currency for a kilogram.
    Cost(Option<u32>),
    /// Its data sheet: the most of it in an ink.
    Most(Option<Share>),
    /// A base's data sheet: the most pigment, all together, in an ink of it.
    MostPigment(Option<Share>),
    /// Say so when less than this is left.
    LowAt(Option<Grams>),
    /// What it is bought in.
    Tub(Option<Grams>),
    /// Which data sheet, where it stands, anything else.
    Note(String),
}

/// Whether a weight is one a shop keeps.
pub(crate) fn is_kept(weight: Grams) -> bool {
    (Grams::ZERO..=Grams::MOST).contains(&weight)
}

impl ComponentField {
    /// As [`crate::facts::Fact::in_bounds`].
    pub(crate) fn in_bounds(&self) -> bool {
        match self {
            Self::Name(text) => is_name(text),
            Self::Note(text) => is_note(text),
            Self::Density(density) => density.is_none_or(|density| (100..=9_000).contains(&density)),
            Self::Cost(cost) => cost.is_none_or(|cost| cost <= 1_000_000_000),
            Self::Most(share) | Self::MostPigment(share) => share.is_none_or(|share| share <= Share::WHOLE),
            Self::LowAt(weight) | Self::Tub(weight) => weight.is_none_or(is_kept),
            Self::Kind(_) | Self::Colour(_) | Self::Hiding(_) => true,
        }
    }
}
