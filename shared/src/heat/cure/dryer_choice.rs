//! Which dryer a run goes through.

use crate::heat::Heater;
use crate::ids::{RunId, Subject};
use crate::shop::Shop;

/// Why a run uses this dryer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DryerChoice {
    /// It was chosen for the run.
    Chosen,
    /// The shop has no other.
    Only,
    /// The shop has several and none was chosen: the oldest is assumed.
    Assumed,
}

/// The dryer a run uses: the chosen one if it exists, else the oldest.
pub(crate) fn dryer_of(shop: &Shop, run: RunId) -> Option<(Subject, &Heater, DryerChoice)> {
    let own = |id: Subject| shop.heat.heater(id).filter(|heater| heater.is_dryer());
    if let Some(id) = shop.heat.chosen_dryer(run) {
        if let Some(heater) = own(id) {
            return Some((id, heater, DryerChoice::Chosen));
        }
    }
    let dryers = || shop.heat.heaters().filter(|(_, heater)| heater.is_dryer());
    let (id, heater) = dryers().min_by_key(|(id, heater)| (heater.created, *id))?;
    let choice = if dryers().count() == 1 { DryerChoice::Only } else { DryerChoice::Assumed };
    Some((id, heater, choice))
}
