//! What the shop's earlier runs, and the printer, say about a run.

use super::course::{CoursePrior, RunSimilarity, TroublePrior};
use crate::collections::sort_by_key;
use crate::ids::RunId;
use crate::run::model::RunKind;
use crate::run::{PaceSummary, Run};
use crate::shop::Shop;
use crate::time::WallTime;
use std::cmp::Reverse;

/// Where the expectation of a run's pace comes from, beside its own counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PaceSource {
    /// Nothing but its own counts.
    Unknown,
    /// Earlier runs at the same location, on the same fabric, with the same hits and flash.
    Alike {
        /// Number of runs.
        runs: u32,
    },
    /// Other runs.
    Other {
        /// Number of runs.
        runs: u32,
    },
    /// The printer's guess.
    Guess,
}

/// The shop's latest runs of each kind that are off the press: collected once for any number of forecasts.
pub struct Experience<'a> {
    shop: &'a Shop,
    /// The latest first.
    ended: Vec<(RunKind, (WallTime, RunId))>,
}

/// Fewest gaps of a run to learn the pace from.
const MIN_GAPS: u32 = 5;
/// Most runs learned from, the latest.
const MAX_RUNS: usize = 12;

impl<'a> Experience<'a> {
    /// The experience of a shop.
    pub fn of(shop: &'a Shop) -> Self {
        let of_kind = shop.links.ended_runs.iter();
        let mut ended: Vec<_> = of_kind.flat_map(|(kind, runs)| runs.iter().map(move |run| (kind, run))).collect();
        sort_by_key(&mut ended, |(_, run)| Reverse(*run));
        Self { shop, ended }
    }

    /// What is expected of the course of a run, and from where: runs alike, else the printer's guess with the shape
    /// of other runs, else other runs, those at the same location first.
    pub fn course(&self, id: RunId, run: &Run) -> (CoursePrior, PaceSource) {
        let this = kind(self.shop, run);
        let alike = self.latest(id, MIN_GAPS, |kind| *kind == this);
        if !alike.is_empty() {
            return (
                CoursePrior::learned(&alike, RunSimilarity::Alike),
                PaceSource::Alike { runs: alike.len() as u32 },
            );
        }
        let mut other = self.latest(id, MIN_GAPS, |kind| kind.location == this.location);
        if other.is_empty() {
            other = self.latest(id, MIN_GAPS, |_| true);
        }
        let prior = CoursePrior::learned(&other, RunSimilarity::Other);
        match run.guess {
            Some(guess) if guess.seconds() > 0.0 => (prior.with_guess(guess.seconds()), PaceSource::Guess),
            _ if other.is_empty() => (prior, PaceSource::Unknown),
            _ => (prior, PaceSource::Other { runs: other.len() as u32 }),
        }
    }

    /// What is expected of a run's stops and misprints: from the shop's latest runs, alike or not.
    pub fn trouble(&self, id: RunId) -> TroublePrior {
        TroublePrior::learned(&self.latest(id, 0, |_| true))
    }

    /// The latest runs of these kinds with so many gaps at least, the latest first, without this one.
    fn latest(&self, id: RunId, gaps: u32, is_meant: impl Fn(&RunKind) -> bool) -> Vec<&'a PaceSummary> {
        let others = self.ended.iter().filter(|(kind, (_, other))| *other != id && is_meant(kind));
        others
            .filter_map(|(_, (_, other))| self.shop.run(*other)?.progress.ended_summary())
            .filter(|summary| summary.gaps >= gaps)
            .take(MAX_RUNS)
            .collect()
    }
}

fn kind(shop: &Shop, run: &Run) -> RunKind {
    RunKind::of(run, run.lot.and_then(|lot| shop.lot(lot)).map(|lot| lot.fabric))
}
