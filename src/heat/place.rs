//! Which of these screens is shown, as read from the hash behind `#/heat`.

use uuid::Uuid;

/// Among dryers, cure and the room.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum HeatPlace {
    /// The first of them.
    Home,
    /// The heat of the room.
    Room,
    /// Dryers and flash units.
    Units,
    /// A new one.
    NewUnit,
    /// One's fields.
    Unit(Uuid),
    /// What reaches the print.
    Measure(Uuid),
    /// How dryers settled.
    Settlings,
    /// Sheets of inks.
    Sheets,
    /// A new one.
    NewSheet,
    /// A new one for the ink of a run.
    SheetOf(Uuid),
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
    TestOf(Uuid),
    /// One of them.
    Test(Uuid),
    /// Trials.
    Trials,
    /// A new one.
    NewTrial,
    /// A new one that starts from a run's set-up.
    TrialOf(Uuid),
    /// One of them.
    Trial(Uuid),
}

impl HeatPlace {
    /// The place of what follows in the hash.
    pub fn of(path: &[&str]) -> Option<Self> {
        let named = |name: &str| {
            Some(match name {
                "room" => Self::Room,
                "units" => Self::Units,
                "settling" => Self::Settlings,
                "inks" => Self::Sheets,
                "limits" => Self::Limits,
                "tests" => Self::Tests,
                "trials" => Self::Trials,
                _ => return None,
            })
        };
        let new = |name: &str| {
            Some(match name {
                "unit" => Self::NewUnit,
                "ink" => Self::NewSheet,
                "test" => Self::NewTest,
                "trial" => Self::NewTrial,
                _ => return None,
            })
        };
        let one = |name: &str, id: Uuid| {
            Some(match name {
                "unit" => Self::Unit(id),
                "measure" => Self::Measure(id),
                "ink" => Self::Sheet(id),
                "ink-of" => Self::SheetOf(id),
                "test" => Self::Test(id),
                "test-of" => Self::TestOf(id),
                "trial" => Self::Trial(id),
                "trial-of" => Self::TrialOf(id),
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
            Self::Room => ("room", None),
            Self::Units => ("units", None),
            Self::Settlings => ("settling", None),
            Self::Sheets => ("inks", None),
            Self::Limits => ("limits", None),
            Self::Tests => ("tests", None),
            Self::Trials => ("trials", None),
            Self::NewUnit => ("unit/new", None),
            Self::NewSheet => ("ink/new", None),
            Self::NewTest => ("test/new", None),
            Self::NewTrial => ("trial/new", None),
            Self::Unit(id) => ("unit", Some(id)),
            Self::Measure(id) => ("measure", Some(id)),
            Self::Sheet(id) => ("ink", Some(id)),
            Self::SheetOf(id) => ("ink-of", Some(id)),
            Self::Test(id) => ("test", Some(id)),
            Self::TestOf(id) => ("test-of", Some(id)),
            Self::Trial(id) => ("trial", Some(id)),
            Self::TrialOf(id) => ("trial-of", Some(id)),
        };
        id.map_or_else(|| format!("/{name}"), |id| format!("/{name}/{id}"))
    }

    /// Its hash.
    pub fn hash(self) -> String {
        crate::place::Place::Heat(self).hash()
    }
}
