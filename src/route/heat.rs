//! Which of these screens is shown, as read from the hash behind `#/heat`.

use uuid::Uuid;

/// Among dryers, cure and the room.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum HeatRoute {
    /// The first of them.
    Home,
    /// The heat of the room.
    Climate,
    /// Dryers and flash units.
    Dryers,
    /// A new one.
    NewDryer,
    /// One's fields.
    Dryer(Uuid),
    /// What reaches the print.
    Measure(Uuid),
    /// How dryers settled.
    SettlingTimes,
    /// Sheets of inks.
    Sheets,
    /// A new one.
    NewSheet,
    /// A new one for the ink of a run.
    NewSheetForRun(Uuid),
    /// One's figures.
    Sheet(Uuid),
    /// What fabrics bear.
    Limits,
    /// One limit: its number among the fabrics and their two limits.
    Limit(u8),
    /// Wash, rub and stretch tests.
    Tests,
    /// A new one.
    NewTest,
    /// A new one of what a run prints.
    NewTestForRun(Uuid),
    /// One of them.
    Test(Uuid),
    /// Trials.
    Trials,
    /// A new one.
    NewTrial,
    /// A new one that starts from a run's set-up.
    NewTrialForRun(Uuid),
    /// One of them.
    Trial(Uuid),
}

impl HeatRoute {
    /// The place of what follows in the hash.
    pub fn from_path(path: &[&str]) -> Option<Self> {
        let named = |name: &str| {
            Some(match name {
                "room" => Self::Climate,
                "units" => Self::Dryers,
                "settling" => Self::SettlingTimes,
                "inks" => Self::Sheets,
                "limits" => Self::Limits,
                "tests" => Self::Tests,
                "trials" => Self::Trials,
                _ => return None,
            })
        };
        let new = |name: &str| {
            Some(match name {
                "unit" => Self::NewDryer,
                "ink" => Self::NewSheet,
                "test" => Self::NewTest,
                "trial" => Self::NewTrial,
                _ => return None,
            })
        };
        let one = |name: &str, id: Uuid| {
            Some(match name {
                "unit" => Self::Dryer(id),
                "measure" => Self::Measure(id),
                "ink" => Self::Sheet(id),
                "ink-of" => Self::NewSheetForRun(id),
                "test" => Self::Test(id),
                "test-of" => Self::NewTestForRun(id),
                "trial" => Self::Trial(id),
                "trial-of" => Self::NewTrialForRun(id),
                _ => return None,
            })
        };
        match path {
            [] => Some(Self::Home),
            [name] => named(name),
            [name, "new"] => new(name),
            ["limit", number] => number.parse().ok().map(Self::Limit),
            [name, id] => Uuid::parse_str(id).ok().and_then(|id| one(name, id)),
            _ => None,
        }
    }

    /// What follows in the hash: empty or with a leading slash.
    pub fn path(self) -> String {
        let (name, id) = match self {
            Self::Home => return String::new(),
            Self::Limit(number) => return format!("/limit/{number}"),
            Self::Climate => ("room", None),
            Self::Dryers => ("units", None),
            Self::SettlingTimes => ("settling", None),
            Self::Sheets => ("inks", None),
            Self::Limits => ("limits", None),
            Self::Tests => ("tests", None),
            Self::Trials => ("trials", None),
            Self::NewDryer => ("unit/new", None),
            Self::NewSheet => ("ink/new", None),
            Self::NewTest => ("test/new", None),
            Self::NewTrial => ("trial/new", None),
            Self::Dryer(id) => ("unit", Some(id)),
            Self::Measure(id) => ("measure", Some(id)),
            Self::Sheet(id) => ("ink", Some(id)),
            Self::NewSheetForRun(id) => ("ink-of", Some(id)),
            Self::Test(id) => ("test", Some(id)),
            Self::NewTestForRun(id) => ("test-of", Some(id)),
            Self::Trial(id) => ("trial", Some(id)),
            Self::NewTrialForRun(id) => ("trial-of", Some(id)),
        };
        id.map_or_else(|| format!("/{name}"), |id| format!("/{name}/{id}"))
    }

    /// Its hash.
    pub fn hash(self) -> String {
        super::Route::Heat(self).hash()
    }
}
