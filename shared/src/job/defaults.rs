//! Which earlier lot or run should a new one start from?

use super::Lot;
use super::model::garment_id;
use crate::collections::sort_by;
use crate::facts::{Fabric, Location};
use crate::ids::{JobId, LotId, RunId};
use crate::run::Run;
use crate::shop::Shop;
use crate::time::LeftOut;

/// The lot that a new lot of this job starts from: the job's latest. Never another job's: its fabric may be another one.
pub fn suggested_lot(shop: &Shop, job: JobId) -> Option<&Lot> {
    shop.lots_of(job).into_iter().max_by_key(|(id, lot)| (lot.created, *id)).map(|(_, lot)| lot)
}

/// The names of the garments that were ordered lately, each once, the latest first.
pub fn garment_names(shop: &Shop) -> Vec<String> {
    let mut names: Vec<String> = Vec::new();
    for lot in shop.new_lots() {
        if !names.iter().any(|name| is_same_name(name, &lot.garment)) {
            names.push(lot.garment.trim().to_owned());
        }
    }
    names
}

/// The names of the clients of the jobs that are not deleted, each once, in order. Empty names are left out.
pub fn client_names(shop: &Shop) -> Vec<String> {
    let mut names: Vec<String> = shop.links.clients.iter().map(str::to_owned).collect();
    sort_by(&mut names, Ord::cmp);
    names
}

/// The fabric of a garment of this name, whatever its case: that of the latest one ordered. `None` if the name is not
/// known, or empty.
pub fn fabric_of_garment(shop: &Shop, name: &str) -> Option<Fabric> {
    let lots = shop.links.lots_of_garment(garment_id(name)?)?;
    let is_it = |lot: &Lot| !lot.deleted && is_same_name(&lot.garment, name);
    let latest = lots.newest(|id| shop.lots.get(&id).is_some_and(is_it)).unwrap_or_else(|LeftOut| {
        let all = shop.lots.iter().filter(|(_, lot)| is_it(lot));
        all.max_by_key(|(id, lot)| (lot.created, **id)).map(|(id, _)| *id)
    });
    latest.and_then(|id| shop.lots.get(&id)).map(|lot| lot.fabric)
}

fn is_same_name(one: &str, other: &str) -> bool {
    one.trim().to_lowercase() == other.trim().to_lowercase()
}

/// What a new run starts from.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct NewRun {
    /// The run with its set-up; its ink, ink colour and estimated time only if the same job has a run at this location.
    pub run: Run,
    /// The run that the set-up is taken from.
    pub set_up_from: Option<RunId>,
}

/// What a new run of this lot at this location starts from: the set-up of [`suggested_run`]; ink, its colour and the
/// estimated time of the job's latest run at this location, because one job has one art.
pub fn new_run(shop: &Shop, lot: LotId, location: Location) -> NewRun {
    let from = suggested_run_with_id(shop, lot, location);
    let job = shop.lot(lot).and_then(|lot| lot.job);
    let of_job = job.into_iter().flat_map(|job| shop.lots_of(job)).flat_map(|(lot, _)| shop.runs_of(lot));
    let sibling = of_job
        .filter(|(_, run)| run.location == location)
        .max_by_key(|(id, run)| (run.created, *id))
        .map(|(_, run)| run);
    let set_up = from.map(|(_, run)| run.set_up.clone()).unwrap_or_default();
    let run = Run {
        location,
        set_up,
        ink: sibling.map(|run| run.ink.clone()).unwrap_or_default(),
        ink_colour: sibling.and_then(|run| run.ink_colour),
        guess: sibling.and_then(|run| run.guess),
        ..Run::default()
    };
    NewRun { run, set_up_from: from.map(|(id, _)| id) }
}

/// The run that a new run of this lot at this location starts from: the latest with the same location and
/// fabric, otherwise the same fabric, otherwise the same location. `None` if there is none.
pub fn suggested_run(shop: &Shop, lot: LotId, location: Location) -> Option<&Run> {
    suggested_run_with_id(shop, lot, location).map(|(_, run)| run)
}

fn suggested_run_with_id(shop: &Shop, lot: LotId, location: Location) -> Option<(RunId, &Run)> {
    let fabric = shop.lot(lot)?.fabric;
    let alike = |(other, place): (Fabric, Location)| {
        let same_heat = !fabric.is_heat_sensitive() && !other.is_heat_sensitive();
        match (other == fabric, place == location) {
            (true, true) => 3,
            (true, false) => 2,
            // Dryer settings for cotton are not offered for a heat-sensitive fabric.
            (false, true) if same_heat => 1,
            _ => 0,
        }
    };
    let latest = |likeness| shop.links.runs_by_place.newest(|place| alike(place) == likeness).transpose();
    let id = match [3, 2, 1].into_iter().find_map(latest)? {
        Ok(id) => id,
        Err(LeftOut) => {
            let fabric_of = |run: &Run| Some(shop.lot(run.lot?)?.fabric);
            let likeness = |run: &Run| fabric_of(run).map_or(0, |fabric| alike((fabric, run.location)));
            let all = shop.runs().filter(|(_, run)| !run.deleted && likeness(run) > 0);
            let last = |run: &Run| run.progress.last_activity.unwrap_or(run.created);
            all.max_by_key(|(id, run)| (likeness(run), last(run), *id))?.0
        }
    };
    Some((id, shop.run(id)?))
}
