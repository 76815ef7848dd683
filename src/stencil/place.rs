//! Which of these screens is shown, as read from the hash behind `#/stencil`.

/// Among exposures and the bath.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum StencilPlace {
    /// The first of them.
    Home,
}

impl StencilPlace {
    /// The place of what follows in the hash.
    pub fn of(path: &[&str]) -> Option<Self> {
        match path {
            [] => Some(Self::Home),
            _ => None,
        }
    }

    /// What follows in the hash: empty or with a leading slash.
    pub fn path(self) -> String {
        match self {
            Self::Home => String::new(),
        }
    }
}
