//! The routes: parsed from and written to `location.hash`, so that any static host at any path
//! serves every page, and the browser's back button works.

mod colour;
mod exposure;
mod heat;
mod ink;
mod jobs;
mod more;
mod pot;
mod screens;

pub use colour::ColourRoute;
pub use exposure::ExposureRoute;
pub use heat::HeatRoute;
pub use ink::InkRoute;
pub use jobs::JobsRoute;
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
    /// Jobs, their lots and runs.
    Jobs(JobsRoute),
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
            _ => JobsRoute::from_path(&path).map(Self::Jobs),
        };
        found.unwrap_or_default()
    }

    /// The hash of a route.
    pub fn hash(self) -> String {
        match self {
            Self::Day => "#/".into(),
            Self::Jobs(route) => format!("#{}", route.path()),
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
        crate::platform::history::go(&self.hash());
    }

    /// Navigates to it from a page that is done with, such as a saved form: Back does not lead there.
    pub fn replace(self) {
        crate::platform::history::replace(&self.hash());
    }

    /// Handles a click on the back arrow to it: goes back if it is the page before.
    pub fn go_up(self, event: &web_sys::MouseEvent) {
        if !(event.ctrl_key() || event.meta_key() || event.shift_key()) {
            event.prevent_default();
            crate::platform::history::go_up(&self.hash());
        }
    }

    /// The page before this one, if this tab came from one.
    pub fn before() -> Option<Self> {
        crate::platform::history::before().map(|hash| Self::from_hash(&hash))
    }
}
