//! What a component's colour is based on: instruments, or photos.

use super::characterised::Knowledge;
use crate::facts::{DrawdownMade, Lay, ReadBy, Share, SwatchSeen};
use crate::ids::Subject;

/// The readings that a component's colour is based on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub struct RestsOn {
    /// Number of drawdowns used.
    pub drawdowns: u32,
    /// How many of them were read from a photo: a difference, added to a known patch.
    pub photos: u32,
    /// Whether one was let down with a white or base that is itself based on photos.
    pub through: bool,
}

impl RestsOn {
    /// Whether it is based on any photo.
    pub fn any_photo(self) -> bool {
        self.photos > 0 || self.through
    }

    /// Adds a drawdown.
    pub(crate) fn and(&mut self, knowledge: &mut Knowledge, made: &DrawdownMade) {
        self.drawdowns += 1;
        self.photos += u32::from(made.is_by_photo());
        let rest = made.rest.filter(|_| made.share < Share::WHOLE);
        self.through |= rest.is_some_and(|rest| knowledge.rests_on(rest).any_photo());
    }
}

impl DrawdownMade {
    /// Whether it, or its backing, was read from a photo.
    pub fn is_by_photo(&self) -> bool {
        let photo = |seen: &SwatchSeen| matches!(seen, SwatchSeen::Colour(reading) if reading.by == ReadBy::Photo);
        photo(&self.seen) || matches!(&self.lay, Lay::Over { backing, .. } if photo(backing))
    }
}

impl Knowledge<'_> {
    /// What a component's colour is based on; nothing if it was never drawn down.
    pub(crate) fn rests_on(&mut self, id: Subject) -> RestsOn {
        let drawn = self.plain(id).and_then(|known| known.drawn);
        drawn.map(|drawn| drawn.rests_on).unwrap_or_default()
    }

    /// Whether any of these is based on a photo.
    pub(crate) fn any_photo(&mut self, ids: impl IntoIterator<Item = Subject>) -> bool {
        ids.into_iter().any(|id| self.rests_on(id).any_photo())
    }
}
