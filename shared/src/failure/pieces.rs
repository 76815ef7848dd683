//! How many pieces of a run are good, suspect and spoiled?

use super::Failure;
use crate::bounds::total;
use crate::facts::{Size, Suspects};
use crate::ids::{RunId, Subject};
use crate::shop::Shop;
use crate::time::WallTime;
use std::collections::BTreeMap;

/// The pieces of a run, each counted once.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub struct RunPieces {
    /// Good, as far as is known.
    pub good: u32,
    /// Counted as good, but not inspected since something failed.
    pub suspect: u32,
    /// Spoiled: their garments must be replaced.
    pub spoiled: u32,
}

impl RunPieces {
    /// All pieces printed.
    pub fn printed(&self) -> u32 {
        self.good + self.suspect + self.spoiled
    }
}

/// The good, suspect and spoiled pieces of a run. Good and suspect pieces together are the run's count; a
/// size never has more suspect pieces than were counted.
pub fn run_pieces(shop: &Shop, run: RunId) -> RunPieces {
    let Some(progress) = shop.run(run).map(|run| &run.progress) else { return RunPieces::default() };
    let suspect = total(suspects_of(shop, run).into_values()).min(progress.good());
    RunPieces { good: progress.good() - suspect, suspect, spoiled: progress.misprints() }
}

/// Suspect pieces of one size of a failure that nobody has inspected. Counts that were undone are no longer
/// suspect.
pub(super) fn uninspected_of(shop: &Shop, failure: &Failure, size: Option<Size>) -> u32 {
    let there = failure.run.and_then(|run| shop.run(run)).map_or(0, |run| run.progress.good_of(size));
    failure.uninspected_of(size).min(there)
}

/// Like [`uninspected_of`], for all sizes.
pub(super) fn uninspected_pieces(shop: &Shop, failure: &Failure) -> u32 {
    total(failure.sizes().into_iter().map(|size| uninspected_of(shop, failure, size)))
}

/// Suspect pieces of a run that nobody has inspected, by size.
pub fn suspects_of(shop: &Shop, run: RunId) -> BTreeMap<Option<Size>, u32> {
    let mut open: BTreeMap<Option<Size>, u32> = BTreeMap::new();
    let Some(progress) = shop.run(run).map(|run| &run.progress) else { return open };
    for (_, failure) in shop.failures.of_run(run) {
        for size in failure.suspects.keys() {
            let sum = open.entry(*size).or_default();
            *sum = sum.saturating_add(failure.uninspected_of(*size)).min(progress.good_of(*size));
        }
    }
    open.retain(|_, pieces| *pieces > 0);
    open
}

/// The pieces that become suspect, by size, if the last `since` pieces before a failure at wall time `at`
/// were not inspected: found by going back through the counts. Pieces that an earlier failure of the run
/// already made suspect are skipped rather than counted twice, and no size gets more pieces than were
/// counted.
pub fn suspects_before(shop: &Shop, run: RunId, id: Subject, at: WallTime, since: u32) -> Vec<Suspects> {
    let Some(progress) = shop.run(run).map(|run| &run.progress) else { return Vec::new() };
    let mut pulls: Vec<(WallTime, Option<Size>, u32, u32)> = progress
        .pulls()
        .iter()
        .filter(|pull| pull.at <= at)
        .map(|pull| (pull.at, pull.size, pull.pieces, pull.pieces))
        .collect();
    let mut room: BTreeMap<Option<Size>, u32> = BTreeMap::new();
    let own = shop.failures.live(id);
    for (_, size, ..) in &pulls {
        // Pieces that this failure spoiled were still in the count when they became suspect.
        let spoiled = own.map_or(0, |failure| failure.judged_of(*size, crate::facts::Verdict::Spoiled));
        room.insert(*size, progress.good_of(*size) + spoiled);
    }
    let others: Vec<&Failure> =
        shop.failures.of_run(run).into_iter().filter(|(other, _)| *other != id).map(|(_, failure)| failure).collect();
    for other in others {
        for size in other.suspects.keys() {
            let mut open = other.uninspected_of(*size);
            if let Some(room) = room.get_mut(size) {
                *room = room.saturating_sub(open);
            }
            for (_, _, _, free) in pulls.iter_mut().rev().filter(|(when, of, ..)| *when <= other.at && of == size) {
                let taken = open.min(*free);
                *free -= taken;
                open -= taken;
            }
        }
    }
    let mut left = since;
    let mut found: BTreeMap<Option<Size>, u32> = BTreeMap::new();
    for (_, size, pieces, free) in pulls.iter().rev() {
        if left == 0 {
            break;
        }
        let here = left.min(*pieces);
        left -= here;
        let Some(room) = room.get_mut(size) else { continue };
        let taken = here.min(*free).min(*room);
        *room -= taken;
        if taken > 0 {
            *found.entry(*size).or_default() += taken;
        }
    }
    found.into_iter().map(|(size, pieces)| Suspects { size, pieces }).collect()
}
