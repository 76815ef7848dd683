//! An exposure that was found: for which emulsion, mesh and lamp, how long, and how it was found.

use super::lamp::is_lamp_distance;
use super::step_wedge::is_exposure;
use super::{Found, MeshCloth};
use crate::journal::Subject;
use crate::journal::fact::{is_name, is_note};
use crate::pack::Pack;
use crate::quantity::{Length, Seconds};
use serde::{Deserialize, Serialize};

/// Coats of emulsion. **Frozen**: it is stored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, Pack)]
#[serde(deny_unknown_fields)]
pub struct Coats {
    /// On the side that lies on the garment.
    pub print: u8,
    /// On the side of the squeegee.
    pub squeegee: u8,
}

impl Coats {
    /// Most coats on a side.
    pub(super) const MOST: u8 = 9;

    /// As [`crate::journal::Fact::in_bounds`].
    pub(crate) fn in_bounds(self) -> bool {
        self.print <= Self::MOST && self.squeegee <= Self::MOST
    }
}

/// An exposure as it was found. **Frozen** as [`crate::journal::Fact`] is.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Pack)]
#[serde(deny_unknown_fields)]
pub struct Exposure {
    /// For which emulsion.
    pub emulsion: Subject,
    /// Under which lamp.
    pub lamp: Subject,
    /// From which distance; none where there is none to tell.
    pub distance: Option<Length>,
    /// Through which mesh.
    pub cloth: MeshCloth,
    /// How it was coated, where it was told.
    pub coats: Option<Coats>,
    /// How long.
    pub time: Seconds,
    /// How it was found.
    pub found: Found,
    /// Who found it, where the shop has named its crew.
    pub by: Option<String>,
    /// Anything else to know.
    pub note: String,
}

impl Exposure {
    /// As [`crate::journal::Fact::in_bounds`].
    pub(crate) fn in_bounds(&self) -> bool {
        self.distance.is_none_or(is_lamp_distance)
            && self.cloth.in_bounds()
            && self.coats.is_none_or(Coats::in_bounds)
            && is_exposure(self.time)
            && self.found.in_bounds()
            && self.by.as_deref().is_none_or(is_name)
            && is_note(&self.note)
    }
}

/// An exposure that the shop knows.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Pack)]
pub struct KnownExposure {
    /// What was found.
    pub fact: Exposure,
    /// Wall time.
    pub at: u64,
    /// Whether it was deleted.
    pub deleted: bool,
}
