//! What the shop's earlier runs, and the printer, say about a run.

use super::course::{CoursePrior, Kinship, TroublePrior};
use crate::facts::{Fabric, Location};
use crate::ids::RunId;
use crate::run::{PaceSummary, Run};
use crate::shop::Shop;
use crate::time::WallTime;

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

/// The shop's runs that are off the press: collected once for any number of forecasts.
pub struct Experience<'a> {
    shop: &'a Shop,
    ended: Vec<Ended<'a>>,
}

struct Ended<'a> {
    id: RunId,
    kind: Kind,
    last: Option<WallTime>,
    summary: &'a PaceSummary,
}

/// What makes runs alike.
#[derive(Clone, Copy, PartialEq)]
struct Kind {
    location: Location,
    fabric: Option<Fabric>,
    hits: u8,
    has_flash: bool,
}

/// Fewest gaps of a run to learn the pace from.
const MIN_GAPS: u32 = 5;
/// Most runs learned from, the latest.
const MAX_RUNS: usize = 12;

impl<'a> Experience<'a> {
    /// The experience of a shop.
    pub fn of(shop: &'a Shop) -> Self {
        let ended = shop
            .runs()
            .filter(|(_, run)| !run.deleted)
            .filter_map(|(id, run)| {
                let summary = run.progress.ended_summary()?;
                Some(Ended { id, kind: kind(shop, run), last: run.progress.last_activity, summary })
            })
            .collect();
        Self { shop, ended }
    }

    /// What is expected of the course of a run, and from where: runs alike, else the printer's guess with the shape
    /// of other runs, else other runs, those at the same location first.
    pub fn course(&self, id: RunId, run: &Run) -> (CoursePrior, PaceSource) {
        let this = kind(self.shop, run);
        let timed = |ended: &Ended<'_>| ended.summary.gaps >= MIN_GAPS;
        let alike = self.latest(id, |ended| timed(ended) && ended.kind == this);
        if !alike.is_empty() {
            return (CoursePrior::learned(&alike, Kinship::Alike), PaceSource::Alike { runs: alike.len() as u32 });
        }
        let mut other = self.latest(id, |ended| timed(ended) && ended.kind.location == this.location);
        if other.is_empty() {
            other = self.latest(id, timed);
        }
        let prior = CoursePrior::learned(&other, Kinship::Other);
        match run.guess {
            Some(guess) if guess.seconds() > 0.0 => (prior.with_guess(guess.seconds()), PaceSource::Guess),
            _ if other.is_empty() => (prior, PaceSource::Unknown),
            _ => (prior, PaceSource::Other { runs: other.len() as u32 }),
        }
    }

    /// What is expected of a run's stops and misprints: from the shop's latest runs, alike or not.
    pub fn trouble(&self, id: RunId) -> TroublePrior {
        TroublePrior::learned(&self.latest(id, |_| true))
    }

    /// The latest runs of these, the latest first, without this one.
    fn latest(&self, id: RunId, is_meant: impl Fn(&Ended<'a>) -> bool) -> Vec<&'a PaceSummary> {
        let mut latest: Vec<&Ended<'a>> = Vec::with_capacity(MAX_RUNS + 1);
        for ended in self.ended.iter().filter(|ended| ended.id != id && is_meant(ended)) {
            let at = latest.partition_point(|other| (other.last, other.id) > (ended.last, ended.id));
            if at < MAX_RUNS {
                latest.insert(at, ended);
                latest.truncate(MAX_RUNS);
            }
        }
        latest.into_iter().map(|ended| ended.summary).collect()
    }
}

fn kind(shop: &Shop, run: &Run) -> Kind {
    Kind {
        location: run.location,
        fabric: run.lot.and_then(|lot| shop.lot(lot)).map(|lot| lot.fabric),
        hits: run.set_up.hits,
        has_flash: run.set_up.flash.is_some(),
    }
}
