//! What makes runs alike: what a run's pace is expected from.

use super::Run;
use crate::codec::Encode;
use crate::facts::{Fabric, Location};

/// What makes runs alike.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Encode)]
pub(crate) struct RunKind {
    /// Where they print.
    pub location: Location,
    /// What they print on; `None` until the lot has arrived.
    pub fabric: Option<Fabric>,
    /// Prints of a piece.
    pub hits: u8,
    /// Whether they are flashed.
    pub has_flash: bool,
}

impl RunKind {
    /// The kind of a run on this fabric.
    pub fn of(run: &Run, fabric: Option<Fabric>) -> Self {
        Self { location: run.location, fabric, hits: run.set_up.hits, has_flash: run.set_up.flash.is_some() }
    }
}
