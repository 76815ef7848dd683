//! What a component's colour is based on: instruments, or photos.

use crate::facts::{DrawdownRecord, ReadBy, RecordedLayer, SwatchMeasurement};

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

    /// Adds a drawdown. `rest_by_photo` says whether the white or base it was let down with is based on a photo.
    pub(crate) fn add(&mut self, made: &DrawdownRecord, rest_by_photo: bool) {
        self.drawdowns += 1;
        self.photos += u32::from(made.is_by_photo());
        self.through |= rest_by_photo;
    }
}

impl DrawdownRecord {
    /// Whether it, or its backing, was read from a photo.
    pub fn is_by_photo(&self) -> bool {
        let photo = |seen: &SwatchMeasurement| matches!(seen, SwatchMeasurement::Colour(reading) if reading.by == ReadBy::Photo);
        photo(&self.seen) || matches!(&self.lay, RecordedLayer::Over { backing, .. } if photo(backing))
    }
}
