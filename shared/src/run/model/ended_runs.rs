//! The latest runs of each kind that are off the press: what a run's pace is expected from.

use super::Run;
use crate::codec::Encode;
use crate::facts::{Fabric, Location};
use crate::ids::RunId;
use crate::time::WallTime;

/// Most runs kept of a kind: a dozen are learned from, and some of them have too few gaps. Our own.
const MOST_OF_A_KIND: usize = 24;
/// Most kinds kept, those with the latest runs: ten years of a shop have some dozens. Our own.
const MOST_KINDS: usize = 200;

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

/// A run that is off the press, and when it was last active there.
pub(crate) type LastActive = (WallTime, RunId);

/// The latest runs of each kind that are off the press.
#[derive(Clone, Debug, PartialEq, Default, Encode)]
pub(crate) struct EndedRuns {
    kinds: Vec<OneKind>,
}

/// The latest runs of one kind.
#[derive(Clone, Debug, PartialEq, Encode)]
struct OneKind {
    kind: RunKind,
    /// The oldest first. Never empty.
    runs: Vec<LastActive>,
}

impl EndedRuns {
    /// Adds a run that came off the press.
    pub fn insert(&mut self, kind: RunKind, run: LastActive) {
        let Some(of) = self.kinds.iter_mut().find(|of| of.kind == kind) else {
            if self.kinds.len() == MOST_KINDS {
                let oldest = self.kinds.iter().enumerate().min_by_key(|(_, of)| of.runs.last());
                oldest.map(|(place, _)| place).into_iter().for_each(|place| drop(self.kinds.remove(place)));
            }
            self.kinds.push(OneKind { kind, runs: vec![run] });
            return;
        };
        if let Err(place) = of.runs.binary_search(&run) {
            of.runs.insert(place, run);
        }
        if of.runs.len() > MOST_OF_A_KIND {
            of.runs.remove(0);
        }
    }

    /// Removes a run that went on the press again, was deleted, or is of another kind now.
    pub fn remove(&mut self, kind: RunKind, run: LastActive) {
        let Some(of) = self.kinds.iter_mut().find(|of| of.kind == kind) else { return };
        of.runs.retain(|other| *other != run);
        self.kinds.retain(|of| !of.runs.is_empty());
    }

    /// The runs kept, with their kinds, in no particular order.
    pub fn iter(&self) -> impl Iterator<Item = (RunKind, LastActive)> {
        self.kinds.iter().flat_map(|of| of.runs.iter().map(|run| (of.kind, *run)))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::time::wall;
    use uuid::Uuid;

    fn kind(hits: u8) -> RunKind {
        RunKind { location: Location::FullBack, fabric: None, hits, has_flash: false }
    }

    fn run(n: u64) -> LastActive {
        (wall(n), Uuid::from_u128(n.into()))
    }

    #[test]
    fn the_latest_of_each_kind_are_kept() {
        let mut ended = EndedRuns::default();
        (0..100).for_each(|n| ended.insert(kind(n as u8 % 2), run(n)));
        for hits in [0, 1] {
            let kept: Vec<_> = ended.iter().filter(|(of, _)| *of == kind(hits)).map(|(_, run)| run).collect();
            let latest = (0..100).filter(|n| n % 2 == u64::from(hits)).skip(50 - MOST_OF_A_KIND);
            assert!(kept.into_iter().eq(latest.map(run)));
        }
        (0..100).for_each(|n| ended.remove(kind(n as u8 % 2), run(n)));
        assert_eq!(ended, EndedRuns::default());
    }

    #[test]
    fn a_new_kind_takes_the_place_of_the_one_that_was_printed_longest_ago() {
        let mut ended = EndedRuns::default();
        (0..=MOST_KINDS as u64).for_each(|n| ended.insert(kind(n as u8), run(n + 1)));
        assert!(!ended.iter().any(|(of, _)| of == kind(0)));
        assert_eq!(ended.iter().count(), MOST_KINDS);
    }
}
