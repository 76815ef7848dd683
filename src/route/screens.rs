//! Which of these screens is shown, as read from the hash behind `#/screens`.

use uuid::Uuid;

/// Among the shop's screens.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ScreensRoute {
    /// What is to be burned, and all of them.
    Home,
    /// New screens.
    New,
    /// New screens that a run names.
    NewForRun(Uuid),
    /// A screen.
    Screen(Uuid),
    /// Its fields.
    Edit(Uuid),
    /// Age limits and step times.
    Settings,
}

impl ScreensRoute {
    /// The place of what follows in the hash.
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

    /// What follows in the hash: empty or with a leading slash.
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
