//! Ink trials: a new ink on a fabric, how it was printed and with what result.

use crate::collections::sort_by;
use crate::heat::{Trial, ink_key};
use crate::ids::{RunId, Subject};
use crate::shop::Shop;

/// How well a trial matches a run.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum TrialFit {
    /// The same ink on the same fabric.
    InkAndFabric,
    /// The same ink on another fabric: its heat may be wrong here.
    Ink,
}

/// Trials with a run's ink: those on its fabric first, then on other fabrics; the newest first within each.
pub fn trials_for(shop: &Shop, run: RunId) -> Vec<(Subject, &Trial, TrialFit)> {
    let Some(run) = shop.run(run) else { return Vec::new() };
    let key = ink_key(&run.ink);
    if key.is_empty() {
        return Vec::new();
    }
    let fabric = run.lot.and_then(|lot| shop.lot(lot)).map(|lot| lot.fabric);
    let mut found: Vec<_> = trial_log(shop)
        .into_iter()
        .filter(|(_, trial)| ink_key(&trial.ink) == key)
        .map(|(id, trial)| {
            let fit = if fabric == Some(trial.fabric) { TrialFit::InkAndFabric } else { TrialFit::Ink };
            (id, trial, fit)
        })
        .collect();
    sort_by(&mut found, |one, other| one.2.cmp(&other.2));
    found
}

/// All trials that are not deleted, the newest first.
pub fn trial_log(shop: &Shop) -> Vec<(Subject, &Trial)> {
    let mut trials: Vec<_> = shop.heat.trials().filter(|(_, trial)| !trial.deleted).collect();
    sort_by(&mut trials, |(a, one), (b, other)| (other.created, b).cmp(&(one.created, a)));
    trials
}
