//! Routes of the pots: the hash after `#/pot`.

use uuid::Uuid;

/// A page of a pot.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PotRoute {
    /// A new pot without a recipe, mixed by eye.
    New,
    /// A new pot of a revision.
    NewFromRevision(Uuid),
    /// A new pot for a run's ink.
    NewForRun(Uuid),
    /// A pot.
    Pot(Uuid),
    /// An addition to a pot.
    Add(Uuid),
    /// An event of a pot: the pot, the event.
    Event(Uuid, Uuid),
    /// The fields of a pot.
    Edit(Uuid),
    /// The label of a pot.
    Label(Uuid),
    /// The ink use of a run's print.
    PrintUse(Uuid),
}

impl PotRoute {
    /// Parses the segments after the area's prefix; `None` if they name no page.
    pub fn from_path(path: &[&str]) -> Option<Self> {
        let id = |text: &str| Uuid::parse_str(text).ok();
        match path {
            ["new"] => Some(Self::New),
            ["of", revision] => id(revision).map(Self::NewFromRevision),
            ["for", run] => id(run).map(Self::NewForRun),
            ["print", run] => id(run).map(Self::PrintUse),
            [pot] => id(pot).map(Self::Pot),
            [pot, "add"] => id(pot).map(Self::Add),
            [pot, "edit"] => id(pot).map(Self::Edit),
            [pot, "label"] => id(pot).map(Self::Label),
            [pot, event] => Some(Self::Event(id(pot)?, id(event)?)),
            _ => None,
        }
    }

    /// The hash after the area's prefix, with a leading slash.
    pub fn path(self) -> String {
        match self {
            Self::New => "/new".into(),
            Self::NewFromRevision(revision) => format!("/of/{revision}"),
            Self::NewForRun(run) => format!("/for/{run}"),
            Self::Pot(pot) => format!("/{pot}"),
            Self::Add(pot) => format!("/{pot}/add"),
            Self::Event(pot, event) => format!("/{pot}/{event}"),
            Self::Edit(pot) => format!("/{pot}/edit"),
            Self::Label(pot) => format!("/{pot}/label"),
            Self::PrintUse(run) => format!("/print/{run}"),
        }
    }
}
