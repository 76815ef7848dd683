//! A component that inks are mixed of: pigment, base or additive.

use crate::codec::Encode;
use crate::colour::Colour;
use crate::facts::{ComponentField, ComponentKind, Hiding, Share};
use crate::time::WallTime;
use crate::units::Grams;

/// A pigment, base or additive, in the state its facts leave it.
#[derive(Clone, Debug, PartialEq, Default, Encode)]
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
    /// Wall time of its first fact.
    pub created: WallTime,
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
