//! What inks are mixed of: pigments, bases, additives.

use crate::codec::Encode;
use crate::colour::Colour;
use crate::facts::{ComponentField, ComponentKind, Hiding, Share};
use crate::units::Grams;

/// A pigment, base or additive, as the facts about it leave it.
#[derive(Clone, Debug, PartialEq, Default, Encode)]
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

impl Component {
    pub(crate) fn set(&mut self, field: &ComponentField) {
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

    pub(crate) fn fields(&self) -> Vec<ComponentField> {
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
