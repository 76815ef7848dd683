//! Which of these screens is shown, as read from the hash behind `#/stencil`.

use uuid::Uuid;

/// Among exposures and the bath.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ExposureRoute {
    /// The way in.
    Home,
    /// How long to expose.
    Time,
    /// How long to expose this screen.
    TimeForScreen(Uuid),
    /// A time from a test.
    NewTest,
    /// A time computed from an exposure at another distance.
    NewTestFrom(Uuid),
    /// An exposure that was found.
    Test(Uuid),
    /// Lamps and emulsions.
    Equipment,
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

impl ExposureRoute {
    /// The place of what follows in the hash.
    pub fn from_path(path: &[&str]) -> Option<Self> {
        let id = |text: &str| Uuid::parse_str(text).ok();
        match path {
            [] => Some(Self::Home),
            ["exposure"] => Some(Self::Time),
            ["exposure", "screen", screen] => id(screen).map(Self::TimeForScreen),
            ["exposure", "find"] => Some(Self::NewTest),
            ["exposure", "find", exposure] => id(exposure).map(Self::NewTestFrom),
            ["exposure", exposure] => id(exposure).map(Self::Test),
            ["kit"] => Some(Self::Equipment),
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
            Self::Time => "/exposure".into(),
            Self::TimeForScreen(screen) => format!("/exposure/screen/{screen}"),
            Self::NewTest => "/exposure/find".into(),
            Self::NewTestFrom(exposure) => format!("/exposure/find/{exposure}"),
            Self::Test(exposure) => format!("/exposure/{exposure}"),
            Self::Equipment => "/kit".into(),
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
        super::Route::Exposure(self).hash()
    }
}
