//! What earlier runs of the shop say about the pace of this one.

use super::finish::PieceTime;
use crate::collections::sort_by_key;
use crate::ids::RunId;
use crate::run::{Pace, Run};
use crate::shop::Shop;
use crate::time::Millis;

/// The pace of earlier runs.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct History {
    /// Number of earlier runs.
    pub runs: u32,
    /// Whether they have the same location, fabric, hits and flash, or only some of these.
    pub alike: bool,
    /// What they say about the time of one piece.
    pub piece_time: PieceTime,
}

/// Fewest gaps of a run to learn from.
const MIN_GAPS: u32 = 5;
/// Most runs learned from, the latest first.
const MAX_RUNS: usize = 12;
/// Deviation between runs assumed with a single earlier run, as a fraction of the mean. Our own caution: one
/// run cannot tell.
const ONE_RUN_DEVIATION: f64 = 0.2;

/// The pace of the shop's runs with the same location, fabric, hits and flash if there are any, else of those
/// with the same location, else of all. `None` if there is no earlier run.
pub fn history_for(shop: &Shop, id: RunId) -> Option<History> {
    let this = shop.run(id)?;
    let fabric = |run: &Run| run.lot.and_then(|lot| shop.lot(lot)).map(|lot| lot.fabric);
    let mut others: Vec<(&Run, Pace)> = shop
        .runs()
        .filter(|(other, run)| *other != id && !run.deleted && !run.progress.is_on_press())
        .filter_map(|(_, run)| run.progress.final_pace.filter(|pace| pace.gaps >= MIN_GAPS).map(|pace| (run, pace)))
        .collect();
    sort_by_key(&mut others, |(run, _)| std::cmp::Reverse(run.progress.last_activity));
    let same_place = |run: &Run| run.location == this.location;
    let alike = |run: &Run| {
        same_place(run)
            && fabric(run) == fabric(this)
            && run.set_up.hits == this.set_up.hits
            && run.set_up.flash.is_some() == this.set_up.flash.is_some()
    };
    let paces = |keep: &dyn Fn(&Run) -> bool| -> Vec<Pace> {
        others.iter().filter(|(run, _)| keep(run)).map(|(_, pace)| *pace).take(MAX_RUNS).collect()
    };
    [(true, paces(&alike)), (false, paces(&same_place)), (false, paces(&|_| true))]
        .into_iter()
        .find(|(_, paces)| !paces.is_empty())
        .map(|(alike, paces)| History { runs: paces.len() as u32, alike, piece_time: spread_of(&paces) })
}

/// Combines the paces of several runs. Runs differ from each other more than the pieces of a run: the error
/// of a new run's mean is the deviation between runs, s·√(1 + 1/R), as in prediction of one new observation
/// from R.
fn spread_of(paces: &[Pace]) -> PieceTime {
    let runs = paces.len() as f64;
    let mean = paces.iter().map(|pace| pace.mean).sum::<f64>() / runs;
    let within = (paces.iter().map(|pace| pace.sd.powi(2)).sum::<f64>() / runs).sqrt();
    let (between, degrees_of_freedom) = if paces.len() > 1 {
        let squares: f64 = paces.iter().map(|pace| (pace.mean - mean).powi(2)).sum();
        ((squares / (runs - 1.0)).sqrt(), runs - 1.0)
    } else {
        (ONE_RUN_DEVIATION * mean, 4.0)
    };
    PieceTime { mean, sd: within, mean_error: between * (1.0 + 1.0 / runs).sqrt(), degrees_of_freedom }
}

/// Seconds of trouble per second of work over the shop's latest twelve runs; 0 if there is no run to learn
/// from.
pub fn stop_rate(shop: &Shop) -> f64 {
    let mut runs: Vec<&Run> = shop.runs().map(|(_, run)| run).filter(|run| run.progress.ended.is_some()).collect();
    sort_by_key(&mut runs, |run| std::cmp::Reverse(run.progress.last_activity));
    let (mut stood, mut worked) = (0.0, 0.0);
    for run in runs.iter().take(MAX_RUNS) {
        let progress = &run.progress;
        let (Some(from), Some(to)) = (progress.started, progress.ended) else { continue };
        let trouble: Millis =
            progress.stops.iter().filter(|stop| stop.is_trouble()).map(|stop| stop.overlap(from, to)).sum();
        stood += trouble.seconds();
        worked += progress.active(to).seconds();
    }
    if worked > 0.0 { stood / worked } else { 0.0 }
}
