//! Which of the colour screens is shown, as read from the hash behind `#/colour`.

use uuid::Uuid;

/// Readings, and what follows from them.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ColourRoute {
    /// Pot against target, and what to add.
    Match(Uuid),
    /// The colour that a recipe aims at.
    Target(Uuid),
    /// How a recipe looks on a garment after hits, and what they cost.
    Cover(Uuid),
    /// What drawdowns of a component showed.
    Component(Uuid),
    /// Another drawdown of it.
    NewDrawdown(Uuid),
}

impl ColourRoute {
    /// The place of what follows in the hash.
    pub fn from_path(path: &[&str]) -> Option<Self> {
        let id = |text: &str| Uuid::parse_str(text).ok();
        match path {
            ["match", pot] => id(pot).map(Self::Match),
            ["target", recipe] => id(recipe).map(Self::Target),
            ["cover", recipe] => id(recipe).map(Self::Cover),
            ["component", component] => id(component).map(Self::Component),
            ["component", component, "new"] => id(component).map(Self::NewDrawdown),
            _ => None,
        }
    }

    /// What follows in the hash, with a leading slash.
    pub fn path(self) -> String {
        match self {
            Self::Match(pot) => format!("/match/{pot}"),
            Self::Target(recipe) => format!("/target/{recipe}"),
            Self::Cover(recipe) => format!("/cover/{recipe}"),
            Self::Component(component) => format!("/component/{component}"),
            Self::NewDrawdown(component) => format!("/component/{component}/new"),
        }
    }
}
