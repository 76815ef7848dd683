//! Lists for the heat pages.

use super::{Heater, InkSheet, Settling, TestStatus, ink_key, sheet_for, test_status};
use crate::collections::sort_by;
use crate::ids::{RunId, Subject};
use crate::run::Run;
use crate::shop::Shop;

/// The dryers and flash units in use: dryers first, each kind in order of creation.
pub fn heater_list(shop: &Shop) -> Vec<(Subject, &Heater)> {
    let mut units: Vec<_> = shop.heat.heaters().filter(|(_, heater)| heater.known && !heater.deleted).collect();
    sort_by(&mut units, |(a, one), (b, other)| {
        (!one.is_dryer(), one.created, a).cmp(&(!other.is_dryer(), other.created, b))
    });
    units
}

/// The ink sheets in use, by ink name.
pub fn sheet_list(shop: &Shop) -> Vec<(Subject, &InkSheet)> {
    let mut sheets: Vec<_> = shop.heat.sheets().filter(|(_, sheet)| !sheet.deleted).collect();
    sort_by(&mut sheets, |(a, one), (b, other)| (ink_key(&one.ink), a).cmp(&(ink_key(&other.ink), b)));
    sheets
}

/// All settlings with a known dryer, the newest first, including those in progress.
pub fn settling_log(shop: &Shop) -> Vec<(Subject, &Settling)> {
    let mut log: Vec<_> =
        shop.heat.settlings().filter(|(_, settling)| !settling.deleted && settling.transition.is_some()).collect();
    sort_by(&mut log, |(a, one), (b, other)| (other.at, b).cmp(&(one.at, a)));
    log
}

/// The runs of open jobs that have not ended, including those on the press.
fn runs_to_print(shop: &Shop) -> impl Iterator<Item = (RunId, &Run)> {
    shop.runs_of_open_jobs().into_iter().filter(|(_, run)| run.progress.ended().is_none())
}

/// Inks that are still to be printed and have no sheet, by name, each with a run that uses it.
pub fn inks_without_sheet(shop: &Shop) -> Vec<(String, RunId)> {
    let mut inks: Vec<(String, RunId)> = runs_to_print(shop)
        .filter(|(_, run)| !run.ink.trim().is_empty() && sheet_for(shop, &run.ink).is_none())
        .map(|(id, run)| (run.ink.clone(), id))
        .collect();
    sort_by(&mut inks, |(one, a), (other, b)| (ink_key(one), a).cmp(&(ink_key(other), b)));
    inks.dedup_by(|(one, _), (other, _)| ink_key(one) == ink_key(other));
    inks
}

/// The tests that are due, one per ink and fabric, each with a run that needs it.
pub fn tests_due(shop: &Shop) -> Vec<(RunId, TestStatus)> {
    let mut due: Vec<(RunId, TestStatus)> = Vec::new();
    for (id, _) in runs_to_print(shop) {
        let Some(status) = test_status(shop, id).filter(TestStatus::is_due) else { continue };
        let same = |(_, other): &(RunId, TestStatus)| {
            other.fabric == status.fabric && ink_key(&other.ink) == ink_key(&status.ink)
        };
        if !due.iter().any(same) {
            due.push((id, status));
        }
    }
    due
}
