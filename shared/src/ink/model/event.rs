//! An event of ink.

use crate::codec::Encode;
use crate::deletion::{Deletable, Deletion};
use crate::facts::InkFact;
use crate::time::WallTime;

/// An event of a pot, component, recipe or revision.
#[derive(Clone, Debug, PartialEq, Encode)]
pub struct InkEvent {
    /// The fact last recorded for it.
    pub fact: InkFact,
    /// Wall time at which it was first recorded.
    pub at: WallTime,
    /// Its rank among all facts of the shop when it was first recorded.
    pub rank: u64,
    /// Whether it was deleted, and so undone.
    pub deleted: bool,
    /// Rank of the fact that last changed the contents of pots through this event: the first recording, a recording
    /// with other grams, or the deletion.
    pub(crate) effective_rank: u64,
    /// The same, ignoring the deletion.
    pub(super) content_rank: u64,
}

impl Deletable for InkEvent {
    fn mark(&mut self, deletion: Deletion) {
        self.deleted = deletion.deleted;
        self.effective_rank = if deletion.deleted { deletion.rank } else { self.content_rank };
    }
}
