//! Routes of exposure and the reclaim bath: the hash after `#/stencil`.

use uuid::Uuid;

/// A page of exposure or of the reclaim bath.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ExposureRoute {
    /// The overview.
    Home,
    /// The exposure time for a query.
    Time,
    /// The exposure time for a screen.
    TimeForScreen(Uuid),
    /// A new exposure test.
    NewTest,
    /// A time computed from another exposure, at another distance of the lamp.
    NewTestFrom(Uuid),
    /// An exposure time that was found.
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
    /// Settings of the reclaim bath.
    BathSettings,
    /// Ink volume of a mesh.
    Volume,
}

impl ExposureRoute {
    /// Parses the segments after the area's prefix; `None` if they name no page.
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

    /// The hash after the area's prefix: empty, or with a leading slash.
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

    /// The whole hash.
    pub fn hash(self) -> String {
        super::Route::Exposure(self).hash()
    }
}
