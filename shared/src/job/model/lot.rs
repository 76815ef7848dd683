//! A garment lot: garments of one kind, fabric and colour.

use crate::codec::Encode;
use crate::collections::Map;
use crate::colour::Colour;
use crate::deletion::deletable;
use crate::facts::{Fabric, LotField, Size};
use crate::ids::JobId;
use serde::{Deserialize, Serialize};

/// Garments of one kind, fabric and colour, as the facts about them leave them.
#[derive(Clone, Debug, PartialEq, Default, Serialize, Deserialize, Encode)]
pub struct Lot {
    /// The job they belong to; none until that fact has arrived.
    pub job: Option<JobId>,
    /// What garment.
    pub garment: String,
    /// Its fabric.
    pub fabric: Fabric,
    /// Its colour.
    pub colour: Option<Colour>,
    /// What that colour is called.
    pub colour_name: String,
    /// How many of each size; sizes with none are left out.
    pub pieces: Map<Size, u32>,
    /// Its first fact's place among all facts.
    pub rank: u64,
    /// Wall time of its first fact.
    pub created: u64,
    /// Whether it was deleted.
    pub deleted: bool,
}

deletable!(Lot);

impl Lot {
    pub(crate) fn set(&mut self, field: &LotField) {
        match field {
            LotField::Job(job) => self.job = Some(*job),
            LotField::Garment(garment) => self.garment.clone_from(garment),
            LotField::Fabric(fabric) => self.fabric = *fabric,
            LotField::Colour(colour) => self.colour = Some(*colour),
            LotField::ColourName(name) => self.colour_name.clone_from(name),
            LotField::Pieces(pieces) => {
                self.pieces = pieces.iter().filter(|row| row.pieces > 0).map(|row| (row.size, row.pieces)).collect();
            }
        }
    }

    /// All pieces of the lot.
    pub fn total(&self) -> u32 {
        self.pieces.values().sum()
    }
}
