//! Routes of the shop's screens: the hash after `#/screens`.

use uuid::Uuid;

/// A page of the shop's screens.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ScreensRoute {
    /// The overview: what to burn, and all screens.
    Home,
    /// New screens.
    New,
    /// New screens that a run needs.
    NewForRun(Uuid),
    /// A screen.
    Screen(Uuid),
    /// The fields of a screen.
    Edit(Uuid),
    /// Age limits and step times.
    Settings,
}

impl ScreensRoute {
    /// Parses the segments after the area's prefix; `None` if they name no page.
    pub fn from_path(path: &[&str]) -> Option<Self> {
        let id = |text: &str| Uuid::parse_str(text).ok();
        match path {
            [] => Some(Self::Home),
            ["new"] => Some(Self::New),
            ["new", run] => id(run).map(Self::NewForRun),
            ["room"] => Some(Self::Settings),
            [screen] => id(screen).map(Self::Screen),
            [screen, "edit"] => id(screen).map(Self::Edit),
            _ => None,
        }
    }

    /// The hash after the area's prefix: empty, or with a leading slash.
    pub fn path(self) -> String {
        match self {
            Self::Home => String::new(),
            Self::New => "/new".into(),
            Self::NewForRun(run) => format!("/new/{run}"),
            Self::Screen(screen) => format!("/{screen}"),
            Self::Edit(screen) => format!("/{screen}/edit"),
            Self::Settings => "/room".into(),
        }
    }
}
