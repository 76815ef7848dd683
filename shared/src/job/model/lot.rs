//! A garment lot: garments of one kind, fabric and colour.

use crate::codec::Encode;
use crate::colour::Colour;
use crate::deletion::deletable;
use crate::facts::{Fabric, LotField, Size};
use crate::ids::{JobId, id_of_name};
use crate::time::WallTime;
use std::collections::BTreeMap;
use uuid::Uuid;

/// Garments of one kind, fabric and colour, folded from the facts.
#[derive(Clone, Debug, PartialEq, Default, Encode)]
pub struct Lot {
    /// The job they belong to; `None` until that fact has arrived.
    pub job: Option<JobId>,
    /// The kind of garment.
    pub garment: String,
    /// The fabric.
    pub fabric: Fabric,
    /// The garment colour.
    pub colour: Option<Colour>,
    /// Name of that colour.
    pub colour_name: String,
    /// Number of pieces of each size, without sizes that have none.
    pub pieces: BTreeMap<Size, u32>,
    /// Index of its first fact among all facts.
    pub rank: u64,
    /// Wall time of its first fact.
    pub created: WallTime,
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

    /// Number of pieces in the lot.
    pub fn total(&self) -> u32 {
        self.pieces.values().sum()
    }
}

/// What lots are found by whose garment has this name, whatever its case; `None` for an empty name. Other names may have
/// the same id.
pub(crate) fn garment_id(name: &str) -> Option<Uuid> {
    // The whole word knows which sigma ends it, a letter does not.
    let lower = name.trim().chars().flat_map(char::to_lowercase).map(|letter| if letter == 'ς' { 'σ' } else { letter });
    let lower: String = lower.collect();
    (!lower.is_empty()).then(|| id_of_name(&lower))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_that_differ_in_case_have_one_garment_id() {
        for name in ["Heavy tee", "ÑANDÚ", "ΟΔΟΣ ΣΑΣ", "İstanbul", "Straße"] {
            assert_eq!(garment_id(&name.to_lowercase()), garment_id(name), "{name}");
        }
        assert_eq!(garment_id("  tee "), garment_id("TEE"));
        assert_ne!(garment_id("tee"), garment_id("tote"));
        assert_eq!((garment_id(""), garment_id(" ")), (None, None));
    }
}
