//! What a component's colour is based on: instruments, or photos.

use super::characterised::ColourantLibrary;
use crate::facts::{DrawdownRecord, ReadBy, RecordedLayer, Share, SwatchMeasurement};
use crate::ids::Subject;

/// The readings that a component's colour is based on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub struct ColourProvenance {
    /// Number of drawdowns used.
    pub drawdowns: u32,
    /// How many of them were read from a photo: a difference, added to a known patch.
    pub photos: u32,
    /// Whether one was let down with a white or base that is itself based on photos.
    pub through: bool,
}

impl ColourProvenance {
    /// Whether it is based on any photo.
    pub fn any_photo(self) -> bool {
        self.photos > 0 || self.through
    }

    /// Adds a drawdown.
    pub(crate) fn and(&mut self, library: &mut ColourantLibrary, made: &DrawdownRecord) {
        self.drawdowns += 1;
        self.photos += u32::from(made.is_by_photo());
        let rest = made.rest.filter(|_| made.share < Share::WHOLE);
        self.through |= rest.is_some_and(|rest| library.provenance(rest).any_photo());
    }
}

impl DrawdownRecord {
    /// Whether it, or its backing, was read from a photo.
    pub fn is_by_photo(&self) -> bool {
        let photo = |seen: &SwatchMeasurement| matches!(seen, SwatchMeasurement::Colour(reading) if reading.by == ReadBy::Photo);
        photo(&self.seen) || matches!(&self.lay, RecordedLayer::Over { backing, .. } if photo(backing))
    }
}

impl ColourantLibrary<'_> {
    /// What a component's colour is based on; nothing if it was never drawn down.
    pub(crate) fn provenance(&mut self, id: Subject) -> ColourProvenance {
        let drawn = self.characterised(id).and_then(|known| known.fit);
        drawn.map(|drawn| drawn.provenance).unwrap_or_default()
    }

    /// Whether any of these is based on a photo.
    pub(crate) fn any_photo(&mut self, ids: impl IntoIterator<Item = Subject>) -> bool {
        ids.into_iter().any(|id| self.provenance(id).any_photo())
    }
}
