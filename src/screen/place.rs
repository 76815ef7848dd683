//! Which of these screens is shown, as read from the hash behind `#/screens`.

use uuid::Uuid;

/// Among the shop's screens.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ScreensPlace {
    /// What is to be burned, and all of them.
    Home,
    /// New screens.
    New,
    /// New screens that a run names.
    NewFor(Uuid),
    /// A screen.
    Card(Uuid),
    /// Its fields.
    Edit(Uuid),
    /// Age limits and step times.
    Room,
}

impl ScreensPlace {
    /// The place of what follows in the hash.
    pub fn of(path: &[&str]) -> Option<Self> {
        let id = |text: &str| Uuid::parse_str(text).ok();
        match path {
            [] => Some(Self::Home),
            ["new"] => Some(Self::New),
            ["new", run] => id(run).map(Self::NewFor),
            ["room"] => Some(Self::Room),
            [screen] => id(screen).map(Self::Card),
            [screen, "edit"] => id(screen).map(Self::Edit),
            _ => None,
        }
    }

    /// What follows in the hash: empty or with a leading slash.
    pub fn path(self) -> String {
        match self {
            Self::Home => String::new(),
            Self::New => "/new".into(),
            Self::NewFor(run) => format!("/new/{run}"),
            Self::Card(screen) => format!("/{screen}"),
            Self::Edit(screen) => format!("/{screen}/edit"),
            Self::Room => "/room".into(),
        }
    }
}
