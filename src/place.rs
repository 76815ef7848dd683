//! Where in the app a person is: read from `location.hash`, so that any static folder at any path
//! serves every screen, and the browser's back button works.

pub use crate::colour::ColourPlace;
pub use crate::heat::HeatPlace;
pub use crate::ink::InkPlace;
pub use crate::pot::PotPlace;
pub use crate::screen::ScreensPlace;
pub use crate::stencil::StencilPlace;
use uuid::Uuid;

/// A screen.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub enum Place {
    /// The day's rail.
    #[default]
    Day,
    /// All jobs.
    Jobs,
    /// A new job.
    NewJob,
    /// A job.
    Job(Uuid),
    /// Its fields.
    EditJob(Uuid),
    /// A new lot of a job.
    NewLot(Uuid),
    /// A lot's fields.
    EditLot(Uuid),
    /// A new run of a lot.
    NewRun(Uuid),
    /// A run's fields.
    EditRun(Uuid),
    /// Which run to print.
    Press,
    /// A run on the press: checks, count, what came of it.
    Run(Uuid),
    /// The shop's screens.
    Screens(ScreensPlace),
    /// Exposing and reclaiming.
    Stencil(StencilPlace),
    /// Something that failed on the press.
    Failure(Uuid),
    /// Dryers, cure and the room.
    Heat(HeatPlace),
    /// Recipes, components, stock.
    Ink(InkPlace),
    /// A pot of ink.
    Pot(PotPlace),
    /// Readings of colour.
    Colour(ColourPlace),
    /// Everything else.
    More,
    /// Settings.
    Settings,
    /// Backup, out and in.
    Exchange,
    /// Where the data is and what the app is.
    About,
}

impl Place {
    /// The place of a hash; the day for anything unknown.
    pub fn of(hash: &str) -> Self {
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
            ["screens", rest @ ..] => ScreensPlace::of(rest).map(Self::Screens),
            ["stencil", rest @ ..] => StencilPlace::of(rest).map(Self::Stencil),
            ["failure", failure] => id(failure).map(Self::Failure),
            ["heat", rest @ ..] => HeatPlace::of(rest).map(Self::Heat),
            ["ink", rest @ ..] => InkPlace::of(rest).map(Self::Ink),
            ["pot", rest @ ..] => PotPlace::of(rest).map(Self::Pot),
            ["colour", rest @ ..] => ColourPlace::of(rest).map(Self::Colour),
            ["more"] => Some(Self::More),
            ["more", "settings"] => Some(Self::Settings),
            ["more", "backup"] => Some(Self::Exchange),
            ["more", "about"] => Some(Self::About),
            _ => None,
        };
        found.unwrap_or_default()
    }

    /// Its hash.
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
            Self::Screens(place) => format!("#/screens{}", place.path()),
            Self::Stencil(place) => format!("#/stencil{}", place.path()),
            Self::Failure(failure) => format!("#/failure/{failure}"),
            Self::Heat(place) => format!("#/heat{}", place.path()),
            Self::Ink(place) => format!("#/ink{}", place.path()),
            Self::Pot(place) => format!("#/pot{}", place.path()),
            Self::Colour(place) => format!("#/colour{}", place.path()),
            Self::More => "#/more".into(),
            Self::Settings => "#/more/settings".into(),
            Self::Exchange => "#/more/backup".into(),
            Self::About => "#/more/about".into(),
        }
    }

    /// Goes there.
    pub fn go(self) {
        crate::platform::dom::set_hash(&self.hash());
    }
}
