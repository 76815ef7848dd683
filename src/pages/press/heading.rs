//! The heading of a run.

use crate::i18n;
use lastpull_core::ids::RunId;
use lastpull_core::shop::Shop;

/// Heading of a run's page.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct Heading {
    /// The job's id.
    pub job: lastpull_core::ids::JobId,
    /// The job's title.
    pub title: String,
    /// The location, and the ink.
    pub print: String,
    /// The garment's colour.
    pub garment: Option<lastpull_core::colour::Colour>,
    /// The ink's colour.
    pub ink: Option<lastpull_core::colour::Colour>,
}

/// The heading of a run that exists and has a job.
pub fn heading_of(shop: &Shop, id: RunId) -> Option<Heading> {
    let (job, of) = shop.job_of(id)?;
    let run = shop.run(id)?;
    let lot = run.lot.and_then(|lot| shop.lot(lot));
    Some(Heading {
        job,
        title: of.title.clone(),
        print: format!("{} · {}", i18n::location(run.location), run.ink),
        garment: lot.and_then(|lot| lot.colour),
        ink: run.ink_colour,
    })
}
