//! Routes of the pages under More: the hash after `#/more`.

/// A page under More.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum MoreRoute {
    /// The menu.
    Menu,
    /// Settings of device and shop.
    Settings,
    /// Exporting and importing the backup.
    Backup,
    /// Where the data is stored, and the app's version.
    Storage,
}

impl MoreRoute {
    /// Parses the segments after the area's prefix; `None` if they name no page.
    pub fn from_path(path: &[&str]) -> Option<Self> {
        match path {
            [] => Some(Self::Menu),
            ["settings"] => Some(Self::Settings),
            ["backup"] => Some(Self::Backup),
            ["about"] => Some(Self::Storage),
            _ => None,
        }
    }

    /// The hash after the area's prefix: empty, or with a leading slash.
    pub fn path(self) -> &'static str {
        match self {
            Self::Menu => "",
            Self::Settings => "/settings",
            Self::Backup => "/backup",
            Self::Storage => "/about",
        }
    }

    /// The whole hash.
    pub fn hash(self) -> String {
        super::Route::More(self).hash()
    }
}
