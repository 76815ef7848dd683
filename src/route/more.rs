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
    /// What was deleted and can be restored.
    Deleted,
    /// Where the data is stored, and the app's version.
    Storage,
    /// The glossary.
    Glossary,
    /// The glossary at the term with this number.
    GlossaryTerm(u8),
}

impl MoreRoute {
    /// Parses the segments after the area's prefix; `None` if they name no page.
    pub fn from_path(path: &[&str]) -> Option<Self> {
        match path {
            [] => Some(Self::Menu),
            ["settings"] => Some(Self::Settings),
            ["backup"] => Some(Self::Backup),
            ["deleted"] => Some(Self::Deleted),
            ["about"] => Some(Self::Storage),
            ["glossary"] => Some(Self::Glossary),
            ["glossary", term] => term.parse().ok().map(Self::GlossaryTerm),
            _ => None,
        }
    }

    /// The hash after the area's prefix: empty, or with a leading slash.
    pub fn path(self) -> String {
        let fixed = match self {
            Self::Menu => "",
            Self::Settings => "/settings",
            Self::Backup => "/backup",
            Self::Deleted => "/deleted",
            Self::Storage => "/about",
            Self::Glossary => "/glossary",
            Self::GlossaryTerm(term) => return format!("/glossary/{term}"),
        };
        fixed.into()
    }

    /// The whole hash.
    pub fn hash(self) -> String {
        super::Route::More(self).hash()
    }
}
