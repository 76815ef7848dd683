//! A component that inks are mixed of: pigment, base or additive.

use super::{Colour, Share};
use crate::journal::fact::{is_name, is_note};
use crate::pack::Pack;
use crate::quantity::Grams;
use serde::{Deserialize, Serialize};

/// Role of a component in an ink. **Frozen** names and order: they are stored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Default, Serialize, Deserialize, Pack)]
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
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Default, Serialize, Deserialize, Pack)]
#[serde(rename_all = "snake_case")]
pub enum Hiding {
    /// What lies below shows through.
    #[default]
    Transparent,
    /// What lies below is hidden.
    Opaque,
}

/// A field of a component. **Frozen** as [`crate::journal::Fact`] is.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Pack)]
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

/// A pigment, base or additive, in the state its facts leave it.
#[derive(Clone, Debug, PartialEq, Default, Pack)]
pub struct Component {
    /// Name in the shop.
    pub name: String,
    /// Role in an ink.
    pub kind: ComponentKind,
    /// Colour shown on screen.
    pub colour: Option<Colour>,
    /// Whether it hides.
    pub hiding: Hiding,
    /// Density in milligrams per cubic centimetre.
    pub density: Option<u16>,
    /// Price of a kilogram in hundredths of the shop's currency.
    pub cost: Option<u32>,
    /// Its largest share of an ink.
    pub most: Option<Share>,
    /// The largest share of all pigment in an ink made with this base.
    pub most_pigment: Option<Share>,
    /// Weight below which the stock is reported as low.
    pub low_at: Option<Grams>,
    /// Weight of the tub it is bought in.
    pub tub: Option<Grams>,
    /// Free note.
    pub note: String,
    /// Wall time of its first fact, in milliseconds since 1970-01-01 UTC.
    pub created: u64,
    /// Whether it was deleted.
    pub deleted: bool,
}

/// Whether a weight may be stored: zero to [`Grams::MOST`].
pub(super) fn is_kept(weight: Grams) -> bool {
    (Grams::ZERO..=Grams::MOST).contains(&weight)
}

impl ComponentField {
    /// As [`crate::journal::Fact::in_bounds`].
    pub(super) fn in_bounds(&self) -> bool {
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

impl Component {
    pub(super) fn set(&mut self, field: &ComponentField) {
        match field {
            ComponentField::Name(name) => self.name.clone_from(name),
            ComponentField::Kind(kind) => self.kind = *kind,
            ComponentField::Colour(colour) => self.colour = *colour,
            ComponentField::Hiding(hiding) => self.hiding = *hiding,
            ComponentField::Density(density) => self.density = *density,
            ComponentField::Cost(cost) => self.cost = *cost,
            ComponentField::Most(share) => self.most = *share,
            ComponentField::MostPigment(share) => self.most_pigment = *share,
            ComponentField::LowAt(weight) => self.low_at = *weight,
            ComponentField::Tub(weight) => self.tub = *weight,
            ComponentField::Note(note) => self.note.clone_from(note),
        }
    }

    pub(super) fn fields(&self) -> Vec<ComponentField> {
        vec![
            ComponentField::Name(self.name.clone()),
            ComponentField::Kind(self.kind),
            ComponentField::Colour(self.colour),
            ComponentField::Hiding(self.hiding),
            ComponentField::Density(self.density),
            ComponentField::Cost(self.cost),
            ComponentField::Most(self.most),
            ComponentField::MostPigment(self.most_pigment),
            ComponentField::LowAt(self.low_at),
            ComponentField::Tub(self.tub),
            ComponentField::Note(self.note.clone()),
        ]
    }
}
