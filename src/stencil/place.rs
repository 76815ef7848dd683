//! Which of these screens is shown, as read from the hash behind `#/stencil`.

use uuid::Uuid;

/// Among exposures and the bath.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum StencilPlace {
    /// The way in.
    Home,
    /// How long to expose.
    Exposure,
    /// How long to expose this screen.
    ExposureOf(Uuid),
    /// A time from a test.
    Find,
    /// A time computed from an exposure at another distance.
    FindFrom(Uuid),
    /// An exposure that was found.
    Found(Uuid),
    /// Lamps and emulsions.
    Kit,
    /// A new lamp.
    NewLamp,
    /// A lamp.
    Lamp(Uuid),
    /// A new emulsion.
    NewEmulsion,
    /// An emulsion.
    Emulsion(Uuid),
    /// The reclaim bath.
    Bath,
    /// How the shop uses it.
    BathSettings,
    /// Ink volume of a mesh.
    Volume,
}

impl StencilPlace {
    /// The place of what follows in the hash.
    pub fn of(path: &[&str]) -> Option<Self> {
        let id = |text: &str| Uuid::parse_str(text).ok();
        match path {
            [] => Some(Self::Home),
            ["exposure"] => Some(Self::Exposure),
            ["exposure", "screen", screen] => id(screen).map(Self::ExposureOf),
            ["exposure", "find"] => Some(Self::Find),
            ["exposure", "find", exposure] => id(exposure).map(Self::FindFrom),
            ["exposure", exposure] => id(exposure).map(Self::Found),
            ["kit"] => Some(Self::Kit),
            ["lamp", "new"] => Some(Self::NewLamp),
            ["lamp", lamp] => id(lamp).map(Self::Lamp),
            ["emulsion", "new"] => Some(Self::NewEmulsion),
            ["emulsion", emulsion] => id(emulsion).map(Self::Emulsion),
            ["bath"] => Some(Self::Bath),
            ["bath", "settings"] => Some(Self::BathSettings),
            ["volume"] => Some(Self::Volume),
            _ => None,
        }
    }

    /// What follows in the hash: empty or with a leading slash.
    pub fn path(self) -> String {
        match self {
            Self::Home => String::new(),
            Self::Exposure => "/exposure".into(),
            Self::ExposureOf(screen) => format!("/exposure/screen/{screen}"),
            Self::Find => "/exposure/find".into(),
            Self::FindFrom(exposure) => format!("/exposure/find/{exposure}"),
            Self::Found(exposure) => format!("/exposure/{exposure}"),
            Self::Kit => "/kit".into(),
            Self::NewLamp => "/lamp/new".into(),
            Self::Lamp(lamp) => format!("/lamp/{lamp}"),
            Self::NewEmulsion => "/emulsion/new".into(),
            Self::Emulsion(emulsion) => format!("/emulsion/{emulsion}"),
            Self::Bath => "/bath".into(),
            Self::BathSettings => "/bath/settings".into(),
            Self::Volume => "/volume".into(),
        }
    }

    /// Its whole hash.
    pub fn hash(self) -> String {
        crate::place::Place::Stencil(self).hash()
    }
}
