//! Routes of the colour pages: the hash after `#/colour`.

use uuid::Uuid;

/// A colour page.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ColourRoute {
    /// A pot's colour beside its target, and what to add.
    Match(Uuid),
    /// The target colour of a recipe.
    Target(Uuid),
    /// Whether a recipe's ink covers a garment, and the cost.
    Cover(Uuid),
    /// The drawdowns of a component.
    Component(Uuid),
    /// A new drawdown of a component.
    NewDrawdown(Uuid),
}

impl ColourRoute {
    /// Parses the segments after the area's prefix; `None` if they name no page.
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

    /// The hash after the area's prefix, with a leading slash.
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
