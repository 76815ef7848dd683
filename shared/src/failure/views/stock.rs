//! Which screen could replace the failed one, and when would the press pull again?

use crate::facts::ScreenState;
use crate::ids::{RunId, Subject};
use crate::plan::{open_runs, set_up_time};
use crate::screen::{Screen, remaining_steps, screens_of};
use crate::shop::Shop;
use crate::time::{Millis, WallTime};

/// A screen of the shop that could replace the failed one.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SpareScreenRow {
    /// The screen.
    pub id: Subject,
    /// Its label.
    pub label: String,
    /// Its state.
    pub state: ScreenState,
    /// Whether it has the same mesh count as the failed one.
    pub same_mesh: bool,
    /// Title of the job of another open run that names it.
    pub needed_for: Option<String>,
    /// Wall time at which pulling could continue with it.
    pub pulls_at: WallTime,
}

/// The screens to choose from.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SpareScreens {
    /// Screens of the shop: those no other run names first, then those with the same mesh, then those
    /// nearest to printing.
    pub rows: Vec<SpareScreenRow>,
    /// Wall time at which pulling could continue with a clean frame that is not in the shop's list yet.
    pub new_pulls_at: WallTime,
}

/// The coated and clean screens of the shop that could replace the failed one, at wall time `now`, and those that carry
/// the run's art without being named by it: burned for this before another remedy was chosen. A screen that is assigned to another run is left out; one that
/// another run only names has `needed_for` set.
pub fn spare_screens_for(shop: &Shop, id: Subject, now: WallTime) -> SpareScreens {
    let failure = shop.failures.live(id);
    let failed = failure.and_then(|failure| failure.screen).and_then(|screen| shop.screens.live(screen));
    let mesh = failed.and_then(|screen| screen.mesh).map(|mesh| mesh.count);
    let set_up = Millis::from_seconds(set_up_time(shop).seconds);
    let pulls = |screen: &Screen| {
        now + set_up + remaining_steps(screen, &shop.screens.times, now).iter().map(|(_, left)| *left).sum::<Millis>()
    };
    let run = failure.and_then(|failure| failure.run);
    let named: Vec<Subject> =
        run.into_iter().flat_map(|run| screens_of(shop, run)).filter_map(|found| found.screen).collect();
    let needed_for = |id: Subject| {
        let names = |other: &RunId| screens_of(shop, *other).iter().any(|found| found.screen == Some(id));
        let other = open_runs(shop).into_iter().find(|other| Some(*other) != run && names(other))?;
        shop.job_of(other).map(|(_, job)| job.title.clone())
    };
    let mut rows: Vec<SpareScreenRow> = shop
        .screens
        .iter()
        .filter(|(id, screen)| match screen.state {
            ScreenState::Coated | ScreenState::Clean => true,
            ScreenState::Exposed | ScreenState::Ready => run.is_some() && screen.run == run && !named.contains(id),
            ScreenState::OnPress | ScreenState::ToReclaim | ScreenState::InBath | ScreenState::Failed => false,
        })
        .filter(|(_, screen)| screen.run.is_none() || screen.run == run)
        .map(|(id, screen)| SpareScreenRow {
            id,
            label: screen.label.clone(),
            state: screen.state,
            same_mesh: screen.mesh.map(|mesh| mesh.count) == mesh,
            needed_for: needed_for(id),
            pulls_at: pulls(screen),
        })
        .collect();
    crate::collections::sort_by_key(&mut rows, |row| {
        (row.needed_for.is_some(), !row.same_mesh, row.pulls_at, row.label.clone(), row.id)
    });
    SpareScreens { rows, new_pulls_at: pulls(&Screen { state: ScreenState::Clean, ..Screen::default() }) }
}
