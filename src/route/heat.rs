//! Routes of the heat pages: the hash after `#/heat`.

use uuid::Uuid;

/// A page about dryers, cure or the climate of the shop.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum HeatRoute {
    /// The overview.
    Home,
    /// The climate of the shop.
    Climate,
    /// Dryers and flash units.
    Dryers,
    /// A new dryer or flash unit.
    NewDryer,
    /// The fields of a dryer or flash unit.
    Dryer(Uuid),
    /// Measuring the temperature at the print.
    Measure(Uuid),
    /// Settling times of the dryers.
    SettlingTimes,
    /// Data sheets of inks.
    Sheets,
    /// A new data sheet.
    NewSheet,
    /// A new data sheet for the ink of a run.
    NewSheetForRun(Uuid),
    /// The figures of a data sheet.
    Sheet(Uuid),
    /// Heat limits of fabrics.
    Limits,
    /// One limit, by its index among all fabrics and their two limits.
    Limit(u8),
    /// Wash, crock and stretch tests.
    Tests,
    /// A new test.
    NewTest,
    /// A new test of what a run prints.
    NewTestForRun(Uuid),
    /// A test.
    Test(Uuid),
    /// Trials.
    Trials,
    /// A new trial.
    NewTrial,
    /// A new trial that starts from a run's set-up.
    NewTrialForRun(Uuid),
    /// A trial.
    Trial(Uuid),
}

impl HeatRoute {
    /// Parses the segments after the area's prefix; `None` if they name no page.
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

    /// The hash after the area's prefix: empty, or with a leading slash.
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

    /// The whole hash.
    pub fn hash(self) -> String {
        super::Route::Heat(self).hash()
    }
}
