//! A known exposure: its emulsion, mesh and lamp, its time, and how the time was found.

use super::lamp::is_lamp_distance;
use super::step_wedge::is_exposure;
use super::{Found, MeshCloth};
use crate::journal::Subject;
use crate::journal::fact::{is_name, is_note};
use crate::pack::Pack;
use crate::quantity::{Length, Seconds};
use serde::{Deserialize, Serialize};

/// Number of coats of emulsion on each side. **Frozen**: it is stored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, Pack)]
#[serde(deny_unknown_fields)]
pub struct Coats {
    /// On the print side, which touches the garment.
    pub print: u8,
    /// On the squeegee side.
    pub squeegee: u8,
}

impl Coats {
    /// Most coats on one side.
    pub(super) const MOST: u8 = 9;

    /// As [`crate::journal::Fact::in_bounds`].
    pub(crate) fn in_bounds(self) -> bool {
        self.print <= Self::MOST && self.squeegee <= Self::MOST
    }
}

/// An exposure as it was recorded. **Frozen** as [`crate::journal::Fact`] is.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Pack)]
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
    pub found: Found,
    /// Who found it; `None` if the shop keeps no crew list.
    pub by: Option<String>,
    /// Free notes.
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

/// An exposure in the shop's list.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Pack)]
pub struct KnownExposure {
    /// What was recorded.
    pub fact: Exposure,
    /// When it was first recorded, as wall time.
    pub at: u64,
    /// Whether it was deleted.
    pub deleted: bool,
}
