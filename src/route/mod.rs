//! The routes: parsed from and written to `location.hash`, so that any static host at any path
//! serves every page, and the browser's back button works.

mod colour;
mod exposure;
mod heat;
mod ink;
mod more;
mod pot;
mod screens;

pub use colour::ColourRoute;
pub use exposure::ExposureRoute;
pub use heat::HeatRoute;
pub use ink::InkRoute;
pub use more::MoreRoute;
pub use pot::PotRoute;
pub use screens::ScreensRoute;

use uuid::Uuid;

/// A page of the app.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub enum Route {
    /// The day's schedule.
    #[default]
    Day,
    /// All jobs.
    Jobs,
    /// A new job.
    NewJob,
    /// A job.
    Job(Uuid),
    /// The fields of a job.
    EditJob(Uuid),
    /// A new lot of a job.
    NewLot(Uuid),
    /// The fields of a lot.
    EditLot(Uuid),
    /// A new run of a lot.
    NewRun(Uuid),
    /// The fields of a run.
    EditRun(Uuid),
    /// Choosing the run to print.
    Press,
    /// A run: its checks, its count, its summary.
    Run(Uuid),
    /// The shop's screens.
    Screens(ScreensRoute),
    /// Exposure and the reclaim bath.
    Exposure(ExposureRoute),
    /// A failure on the press.
    Failure(Uuid),
    /// Dryers, cure and climate.
    Heat(HeatRoute),
    /// Recipes, components and stock.
    Ink(InkRoute),
    /// A pot of ink.
    Pot(PotRoute),
    /// Colour.
    Colour(ColourRoute),
    /// The menu, and the pages it leads to that have no area of their own.
    More(MoreRoute),
}

impl Route {
    /// The route of a hash; the day's schedule for an unknown hash.
    pub fn from_hash(hash: &str) -> Self {
        let path: Vec<&str> = hash.trim_start_matches('#').split('/').filter(|part| !part.is_empty()).collect();
        let id = |text: &str| Uuid::parse_str(text).ok();
        let found = match path.as_slice() {
            ["jobs"] => Some(Self::Jobs),
            ["job", "new"] => Some(Self::NewJob),
            ["job", job] => id(job).map(Self::Job),
            ["job", job, "edit"] => id(job).map(Self::EditJob),
            ["job", job, "lot"] => id(job).map(Self::NewLot),
            ["lot", lot] => id(lot).map(Self::EditLot),
            ["lot", lot, "run"] => id(lot).map(Self::NewRun),
            ["run", run] => id(run).map(Self::EditRun),
            ["press"] => Some(Self::Press),
            ["press", run] => id(run).map(Self::Run),
            ["screens", rest @ ..] => ScreensRoute::from_path(rest).map(Self::Screens),
            ["stencil", rest @ ..] => ExposureRoute::from_path(rest).map(Self::Exposure),
            ["failure", failure] => id(failure).map(Self::Failure),
            ["heat", rest @ ..] => HeatRoute::from_path(rest).map(Self::Heat),
            ["ink", rest @ ..] => InkRoute::from_path(rest).map(Self::Ink),
            ["pot", rest @ ..] => PotRoute::from_path(rest).map(Self::Pot),
            ["colour", rest @ ..] => ColourRoute::from_path(rest).map(Self::Colour),
            ["more", rest @ ..] => MoreRoute::from_path(rest).map(Self::More),
            _ => None,
        };
        found.unwrap_or_default()
    }

    /// The hash of a route.
    pub fn hash(self) -> String {
        match self {
            Self::Day => "#/".into(),
            Self::Jobs => "#/jobs".into(),
            Self::NewJob => "#/job/new".into(),
            Self::Job(job) => format!("#/job/{job}"),
            Self::EditJob(job) => format!("#/job/{job}/edit"),
            Self::NewLot(job) => format!("#/job/{job}/lot"),
            Self::EditLot(lot) => format!("#/lot/{lot}"),
            Self::NewRun(lot) => format!("#/lot/{lot}/run"),
            Self::EditRun(run) => format!("#/run/{run}"),
            Self::Press => "#/press".into(),
            Self::Run(run) => format!("#/press/{run}"),
            Self::Screens(route) => format!("#/screens{}", route.path()),
            Self::Exposure(route) => format!("#/stencil{}", route.path()),
            Self::Failure(failure) => format!("#/failure/{failure}"),
            Self::Heat(route) => format!("#/heat{}", route.path()),
            Self::Ink(route) => format!("#/ink{}", route.path()),
            Self::Pot(route) => format!("#/pot{}", route.path()),
            Self::Colour(route) => format!("#/colour{}", route.path()),
            Self::More(route) => format!("#/more{}", route.path()),
        }
    }

    /// Navigates to it.
    pub fn navigate(self) {
        crate::platform::dom::set_hash(&self.hash());
    }
}
