//! What inks are mixed of: pigments, bases, additives.

use super::{Colour, Share};
use crate::journal::fact::{is_name, is_note};
use crate::pack::Pack;
use crate::quantity::Grams;
use serde::{Deserialize, Serialize};

/// What a component is for. **Frozen** names and order: they are stored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Default, Serialize, Deserialize, Pack)]
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
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Default, Serialize, Deserialize, Pack)]
#[serde(rename_all = "snake_case")]
pub enum Hiding {
    /// It shows through.
    #[default]
    Transparent,
    /// It is hidden.
    Opaque,
}

/// A field of a component. **Frozen** as [`crate::journal::Fact`] is.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Pack)]
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

/// A pigment, base or additive, as the facts about it leave it.
#[derive(Clone, Debug, PartialEq, Default, Pack)]
pub struct Component {
    /// What the shop calls it.
    pub name: String,
    /// What it is for.
    pub kind: ComponentKind,
    /// Its colour, as a screen shows it.
    pub colour: Option<Colour>,
    /// Whether it hides.
    pub hiding: Hiding,
    /// Milligrams a cubic centimetre.
    pub density: Option<u16>,
    /// Hundredths of the shop's currency for a kilogram.
    pub cost: Option<u32>,
    /// The most of it in an ink.
    pub most: Option<Share>,
    /// The most pigment, all together, in an ink of this base.
    pub most_pigment: Option<Share>,
    /// Say so when less than this is left.
    pub low_at: Option<Grams>,
    /// What it is bought in.
    pub tub: Option<Grams>,
    /// Anything else.
    pub note: String,
    /// Wall time of its first fact.
    pub created: u64,
    /// Whether it was deleted.
    pub deleted: bool,
}

/// Whether a weight is one a shop keeps.
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
