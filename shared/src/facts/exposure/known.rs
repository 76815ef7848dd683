//! An exposure that was found, as it is stored. **Frozen** as [`crate::facts::Fact`] is.

use super::found::{ExposureMethod, is_exposure_time};
use super::lamp::is_lamp_distance;
use crate::bounds::{is_name, is_note};
use crate::codec::Encode;
use crate::facts::{Coats, MeshCloth};
use crate::ids::Subject;
use crate::units::{Length, Seconds};
use serde::{Deserialize, Serialize};

/// An exposure as it was found. **Frozen** as [`crate::facts::Fact`] is.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Encode)]
#[serde(deny_unknown_fields)]
pub struct Exposure {
    /// The emulsion.
    pub emulsion: Subject,
    /// The lamp.
    pub lamp: Subject,
    /// Distance from the lamp to the emulsion; `None` if it is not known or the lamp has none.
    pub distance: Option<Length>,
    /// The mesh.
    pub cloth: MeshCloth,
    /// How the screen was coated, if that was entered.
    pub coats: Option<Coats>,
    /// The exposure time.
    pub time: Seconds,
    /// How it was found.
    pub found: ExposureMethod,
    /// Who found it; `None` if the shop keeps no crew list.
    pub by: Option<String>,
    /// Free notes.
    pub note: String,
}

impl Exposure {
    /// Whether every value is within its limits; see [`crate::journal::JournalFact::in_bounds`].
    pub(crate) fn in_bounds(&self) -> bool {
        self.distance.is_none_or(is_lamp_distance)
            && self.cloth.in_bounds()
            && self.coats.is_none_or(Coats::in_bounds)
            && is_exposure_time(self.time)
            && self.found.in_bounds()
            && self.by.as_deref().is_none_or(is_name)
            && is_note(&self.note)
    }
}
