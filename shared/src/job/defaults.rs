//! Which earlier lot or run should a new one start from?

use super::Lot;
use crate::facts::Location;
use crate::ids::{JobId, LotId};
use crate::run::Run;
use crate::shop::Shop;

/// The lot that a new lot of this job starts from: the job's latest, otherwise the shop's latest.
pub fn suggested_lot(shop: &Shop, job: JobId) -> Option<&Lot> {
    let last = |of_job: bool| {
        shop.lots
            .iter()
            .filter(move |(_, lot)| !lot.deleted && (lot.job == Some(job) || !of_job))
            .max_by_key(|(id, lot)| (lot.created, **id))
            .map(|(_, lot)| lot)
    };
    last(true).or_else(|| last(false))
}

/// The run that a new run of this lot at this location starts from: the latest with the same location and
/// fabric, otherwise the same fabric, otherwise the same location. `None` if there is none.
pub fn suggested_run(shop: &Shop, lot: LotId, location: Location) -> Option<&Run> {
    let fabric = shop.lot(lot)?.fabric;
    let alike = |run: &Run| {
        let other = run.lot.and_then(|lot| shop.lot(lot)).map(|lot| lot.fabric);
        let same_fabric = other == Some(fabric);
        let same_heat = !fabric.is_heat_sensitive() && other.is_some_and(|other| !other.is_heat_sensitive());
        let same_place = run.location == location;
        match (same_fabric, same_place) {
            (true, true) => 3,
            (true, false) => 2,
            // Dryer settings for cotton are not offered for a heat-sensitive fabric.
            (false, true) if same_heat => 1,
            _ => 0,
        }
    };
    shop.runs()
        .filter(|(_, run)| !run.deleted && alike(run) > 0)
        .max_by_key(|(id, run)| (alike(run), run.progress.last_activity.unwrap_or(run.created), *id))
        .map(|(_, run)| run)
}
