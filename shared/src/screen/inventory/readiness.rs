//! When can the screens of a run print at the earliest?

use super::burn_steps::remaining_steps;
use super::labels::screens_of;
use crate::facts::BurnStep;
use crate::ids::{RunId, Subject};
use crate::shop::Shop;
use crate::time::{Millis, WallTime};

/// A step that screens of a run still need.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct StepTotal {
    /// The step.
    pub step: BurnStep,
    /// Number of screens that need it.
    pub screens: u32,
    /// Time it takes for all of them.
    pub time: Millis,
}

/// What the screens of a run still need.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Readiness {
    /// The missing steps, in the order of the work.
    pub steps: Vec<StepTotal>,
    /// Wall time at which they could print if the work began now.
    pub ready: WallTime,
}

/// The steps that the screens of a run still need at wall time `now`; `None` if every screen of the run
/// that is in the shop's list can print. Steps done by hand take one screen after another, screens dry at
/// the same time, and all screens finish a step before the next step begins. This is our own
/// simplification; it is slightly late if the screens are at different steps.
pub fn readiness(shop: &Shop, run: RunId, now: WallTime) -> Option<Readiness> {
    let named: Vec<Subject> = screens_of(shop, run).into_iter().filter_map(|found| found.screen).collect();
    readiness_of(shop, &named, now)
}

/// Like [`readiness`], for any screens.
pub fn readiness_of(shop: &Shop, ids: &[Subject], now: WallTime) -> Option<Readiness> {
    let mut sums: Vec<StepTotal> = Vec::new();
    let screens: Vec<Vec<(BurnStep, Millis)>> = ids
        .iter()
        .filter_map(|id| shop.screens.live(*id))
        .map(|screen| remaining_steps(screen, &shop.screens.times, now))
        .collect();
    for step in BurnStep::ALL {
        let times = || screens.iter().flatten().filter(|(of, _)| *of == step).map(|(_, time)| *time);
        let time = if step.is_by_hand() { times().sum() } else { times().max().unwrap_or_default() };
        let count = times().count() as u32;
        if count > 0 {
            sums.push(StepTotal { step, screens: count, time });
        }
    }
    let time: Millis = sums.iter().map(|sum| sum.time).sum();
    (!sums.is_empty()).then_some(Readiness { steps: sums, ready: now + time })
}
