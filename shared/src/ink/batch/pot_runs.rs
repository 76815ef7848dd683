//! The runs on which a pot may have been printed.

use super::needs::recipe_of;
use crate::bounds::total;
use crate::collections::sort_by_key;
use crate::facts::InkFact;
use crate::heat::ink_key;
use crate::ids::{RunId, Subject};
use crate::ink::pot_state;
use crate::shop::Shop;

/// A run with a pot's ink.
#[derive(Clone, Debug, PartialEq)]
pub struct PotRun {
    /// Id of the run.
    pub run: RunId,
    /// Its job's title.
    pub title: String,
    /// Its name for the ink.
    pub ink: String,
    /// Good pieces that are not part of a recorded use of ink.
    pub good: u32,
    /// Whether the pot was made for it.
    pub own: bool,
    /// Whether it is on the press.
    pub on_press: bool,
}

/// Most runs offered. Our own.
const MAX_RUNS: usize = 4;

/// The runs with a pot's ink: its own first, then those on the press, then those printed last; runs of finished jobs
/// only while pieces of theirs are not part of a recorded use, and if they are among the shop's latest.
pub fn runs_for_pot(shop: &Shop, id: Subject) -> Vec<PotRun> {
    let Some(pot) = shop.ink.pot(id) else { return Vec::new() };
    let recipe = recipe_of(shop, &pot_state(shop, id)).and_then(|recipe| shop.ink.recipe(recipe));
    let ink = ink_key(recipe.map_or(&pot.name, |recipe| &recipe.name));
    let mut all = shop.runs_of_open_jobs();
    all.extend(pot.run.and_then(|run| Some((run, shop.run(run)?))));
    all.extend(shop.recent_runs().map(|(_, run, of)| (run, of)));
    sort_by_key(&mut all, |(run, _)| *run);
    all.dedup_by_key(|(run, _)| *run);
    let mut runs = Vec::new();
    for (run, of) in all {
        let own = pot.run == Some(run);
        let Some((_, job)) = shop.job_of(run).filter(|_| !of.deleted && (own || ink_key(&of.ink) == ink)) else {
            continue;
        };
        let events = shop.ink.events_of(run);
        let live = events.iter().filter(|(_, event)| !event.deleted);
        let recorded = total(live.map(|(_, event)| pieces_recorded(&event.fact)));
        let progress = &of.progress;
        let good = progress.good().saturating_sub(recorded);
        if !own && good == 0 && job.finished.is_some() {
            continue;
        }
        let last = std::cmp::Reverse(progress.ended.or(progress.started));
        let row =
            PotRun { run, title: job.title.clone(), ink: of.ink.clone(), good, own, on_press: progress.is_on_press() };
        runs.push(((!own, !progress.is_on_press(), last, run), row));
    }
    sort_by_key(&mut runs, |(rank, _)| *rank);
    runs.truncate(MAX_RUNS);
    runs.into_iter().map(|(_, row)| row).collect()
}

/// The run on which a pot was most likely printed: its own if that is on the press or has unrecorded pieces, else one
/// with its ink on the press, else its own. `None` if there is none of these.
pub fn likely_run(runs: &[PotRun]) -> Option<RunId> {
    let first = |is: fn(&PotRun) -> bool| runs.iter().find(|run| is(run)).map(|run| run.run);
    first(|run| run.own && (run.on_press || run.good > 0))
        .or_else(|| first(|run| run.on_press))
        .or_else(|| first(|run| run.own))
}

/// Number of pieces that an event records ink for.
fn pieces_recorded(fact: &InkFact) -> u32 {
    if let InkFact::Used { pieces, .. } = fact { *pieces } else { 0 }
}
