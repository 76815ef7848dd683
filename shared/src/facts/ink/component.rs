//! The stored fields of a component. **Frozen** as [`crate::facts::Fact`] is.

use super::share::Share;
use crate::bounds::{is_name, is_note};
use crate::codec::Encode;
use crate::colour::Colour;
use crate::units::Grams;
use serde::{Deserialize, Serialize};

/// Role of a component in an ink. **Frozen** names and order: they are stored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Default, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case")]
pub enum ComponentKind {
    /// Carries the colour.
    #[default]
    Base,
    /// Gives the colour.
    Pigment,
    /// Changes how the ink prints, dries or holds.
    Additive,
}

impl ComponentKind {
    /// All, in the order they are offered.
    pub const ALL: [Self; 3] = [Self::Base, Self::Pigment, Self::Additive];
}

/// Whether a component hides what lies below. **Frozen** names and order: they are stored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Default, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case")]
pub enum Hiding {
    /// What lies below shows through.
    #[default]
    Transparent,
    /// What lies below is hidden.
    Opaque,
}

/// A field of a component. **Frozen** as [`crate::facts::Fact`] is.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum ComponentField {
    /// Name in the shop.
    Name(String),
    /// Role in an ink.
    Kind(ComponentKind),
    /// Colour shown on screen.
    Colour(Option<Colour>),
    /// Whether it hides.
    Hiding(Hiding),
    /// Density in milligrams per cubic centimetre.
    Density(Option<u16>),
    /// Price of a kilogram in hundredths of the shop's currency.
    Cost(Option<u32>),
    /// Data sheet limit: its largest share of an ink.
    Most(Option<Share>),
    /// Data sheet limit of a base: the largest share of all pigment in an ink made with it.
    MostPigment(Option<Share>),
    /// Weight below which the stock is reported as low.
    LowAt(Option<Grams>),
    /// Weight of the tub it is bought in.
    Tub(Option<Grams>),
    /// Free note: which data sheet, where it is kept, anything else.
    Note(String),
}

/// Whether a weight may be stored: zero to [`Grams::MOST`].
pub(crate) fn is_storable_weight(weight: Grams) -> bool {
    (Grams::ZERO..=Grams::MOST).contains(&weight)
}

impl ComponentField {
    /// Whether every value is within its limits; see [`crate::journal::JournalFact::in_bounds`].
    pub(crate) fn in_bounds(&self) -> bool {
        match self {
            Self::Name(text) => is_name(text),
            Self::Note(text) => is_note(text),
            Self::Density(density) => density.is_none_or(|density| (100..=9_000).contains(&density)),
            Self::Cost(cost) => cost.is_none_or(|cost| cost <= 1_000_000_000),
            Self::Most(share) | Self::MostPigment(share) => share.is_none_or(|share| share <= Share::WHOLE),
            Self::LowAt(weight) | Self::Tub(weight) => weight.is_none_or(is_storable_weight),
            Self::Kind(_) | Self::Colour(_) | Self::Hiding(_) => true,
        }
    }
}
