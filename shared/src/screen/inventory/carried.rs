//! Which runs does a screen belong to?

use super::labels::screens_of;
use crate::collections::Table;
use crate::colour::Colour;
use crate::facts::Location;
use crate::ids::{JobId, RunId, Subject};
use crate::plan::open_runs;
use crate::shop::Shop;

/// A run whose art is on a screen, or that names it.
#[derive(Clone, Debug, PartialEq)]
pub struct AssignedRun {
    /// The run.
    pub run: RunId,
    /// Its job.
    pub job: JobId,
    /// The job's title.
    pub title: String,
    /// The client.
    pub client: String,
    /// The print location.
    pub location: Location,
    /// The ink.
    pub ink: String,
    /// The ink's colour.
    pub ink_colour: Option<Colour>,
    /// The garment's colour.
    pub garment_colour: Option<Colour>,
}

/// The open runs that name each screen, looked up once for a whole board.
pub(crate) type RunsByScreen = Table<Vec<RunId>>;

pub(crate) fn runs_by_screen(shop: &Shop) -> RunsByScreen {
    let mut runs_by_screen = RunsByScreen::default();
    for run in open_runs(shop) {
        for id in screens_of(shop, run).into_iter().filter_map(|found| found.screen) {
            runs_by_screen.get_or_insert_default(id).push(run);
        }
    }
    runs_by_screen
}

/// The run whose art is on the screen first, then the open runs that name it, in the order of the day.
pub(crate) fn assigned_runs(shop: &Shop, id: Subject, runs_by_screen: &RunsByScreen) -> Vec<AssignedRun> {
    let said = shop.screens.live(id).and_then(|screen| screen.run);
    let named = runs_by_screen.get(&id).into_iter().flatten().copied().filter(|run| Some(*run) != said);
    said.into_iter()
        .chain(named)
        .filter_map(|run_id| {
            let (job_id, job) = shop.job_of(run_id)?;
            let run = shop.run(run_id)?;
            Some(AssignedRun {
                run: run_id,
                job: job_id,
                title: job.title.clone(),
                client: job.client.clone(),
                location: run.location,
                ink: run.ink.clone(),
                ink_colour: run.ink_colour,
                garment_colour: run.lot.and_then(|lot| shop.lot(lot)).and_then(|lot| lot.colour),
            })
        })
        .collect()
}
