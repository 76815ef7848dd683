//! Which of a pot's screens is shown, as read from the hash behind `#/pot`.

use uuid::Uuid;

/// At the scale and beside the pot.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PotRoute {
    /// A new pot without a recipe, mixed by eye.
    New,
    /// A new pot by a revision.
    NewFromRevision(Uuid),
    /// A new pot for a run's ink.
    NewForRun(Uuid),
    /// A pot: weighed in, corrected, used.
    Pot(Uuid),
    /// Something more into it.
    Add(Uuid),
    /// Something that happened to it: the pot, the event.
    Event(Uuid, Uuid),
    /// Its fields.
    Edit(Uuid),
    /// Its label.
    Label(Uuid),
    /// What a print of a run takes.
    PrintUse(Uuid),
}

impl PotRoute {
    /// The place of what follows in the hash.
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

    /// What follows in the hash, with a leading slash.
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
