//! What can happen to a screen. **Frozen** as [`crate::facts::Fact`] is.

use crate::bounds::{LIST, is_name, is_note};
use crate::codec::Encode;
use crate::ids::{RunId, Subject};
use crate::time::WallTime;
use serde::{Deserialize, Serialize};

mod burn_step;
mod coats;
mod limits;
mod mesh_sheet;
mod state;

pub use burn_step::{BurnStep, StepTimes};
pub use coats::Coats;
pub use limits::AgeLimits;
pub use mesh_sheet::{MeshCloth, MeshCount, MeshSheet};
pub use state::ScreenState;

/// A fact about a screen; unless noted otherwise, the subject of the entry is the screen.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum ScreenFact {
    /// Sets fields of a screen. The first such fact creates the screen.
    Set(Vec<ScreenField>),
    /// The screen moved to another state.
    Moved {
        /// The new state.
        to: ScreenState,
        /// Who moved it; `None` if the shop keeps no crew list.
        by: Option<String>,
    },
    /// The coat, or the washed-out stencil, was found dry, or was wrongly recorded as dry.
    Dried {
        /// Whether it is dry.
        dry: bool,
        /// Who checked it; `None` if the shop keeps no crew list.
        by: Option<String>,
    },
    /// Number of days after which the shop wants a warning; concerns the shop, not one screen.
    AgeLimits(AgeLimits),
    /// How long each step takes; concerns the shop, not one screen.
    StepTimes(StepTimes),
    /// The latest change was undone: the screen is in its earlier state again, with the age it had there.
    Undone {
        /// The state it returns to.
        to: ScreenState,
        /// Wall time since when it has been in that state.
        since: WallTime,
        /// Wall time at which it was found dry.
        dry: Option<WallTime>,
        /// Wall time at which its image was exposed.
        exposed: Option<WallTime>,
    },
}

/// A field of a screen.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum ScreenField {
    /// The label on the frame.
    Label(String),
    /// The data sheet of its mesh.
    Mesh(Option<MeshSheet>),
    /// Its tension at the last measurement, in tenths of N/cm.
    Tension(Option<u16>),
    /// The emulsion on it, or the last one that was.
    Emulsion(String),
    /// How it is coated.
    Coats(Option<Coats>),
    /// Free notes.
    Notes(String),
    /// The run whose art is on it.
    Run(Option<RunId>),
    /// The colour of the art that it prints.
    Colour(String),
    /// The screen it was burned to replace.
    Replaces(Option<Subject>),
}

/// Highest tension that can be entered, in tenths of N/cm; a drum has less.
pub(crate) const MAX_TENSION: u16 = 1_000;

/// Latest wall time that is accepted: the year 37,648.
const LATEST: WallTime = WallTime::from_unix_ms(1 << 50);

impl ScreenFact {
    /// Whether every value is within its limits; see [`crate::journal::JournalFact::in_bounds`].
    pub(crate) fn in_bounds(&self) -> bool {
        match self {
            Self::Set(fields) => fields.len() <= LIST && fields.iter().all(ScreenField::in_bounds),
            Self::Moved { by, .. } | Self::Dried { by, .. } => by.iter().all(|text| is_name(text)),
            Self::AgeLimits(limits) => limits.in_bounds(),
            Self::StepTimes(times) => times.in_bounds(),
            Self::Undone { since, dry, exposed, .. } => {
                [Some(*since), *dry, *exposed].into_iter().flatten().all(|time| time <= LATEST)
            }
        }
    }
}

impl ScreenField {
    fn in_bounds(&self) -> bool {
        match self {
            Self::Label(text) | Self::Emulsion(text) | Self::Colour(text) => is_name(text),
            Self::Notes(text) => is_note(text),
            Self::Mesh(mesh) => mesh.is_none_or(|mesh| mesh.in_bounds()),
            Self::Tension(tension) => tension.is_none_or(|tenths| tenths <= MAX_TENSION),
            Self::Coats(coats) => coats.is_none_or(Coats::in_bounds),
            Self::Run(_) | Self::Replaces(_) => true,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::facts::Fact;
    use crate::journal::JournalFact;
    use crate::time::wall;
    use mesh_sheet::MeshCount;
    use uuid::Uuid;

    #[test]
    fn the_json_names_of_screen_facts_are_frozen() {
        let by = Some("Ines".to_owned());
        let mesh = MeshSheet::of_count(MeshCount::PerInch(156));
        for (fact, json) in [
            (ScreenFact::Set(vec![ScreenField::Label("A3".into())]), r#"{"screen":{"set":[{"label":"A3"}]}}"#),
            (
                ScreenFact::Set(vec![ScreenField::Tension(Some(245)), ScreenField::Run(None)]),
                r#"{"screen":{"set":[{"tension":245},{"run":null}]}}"#,
            ),
            (
                ScreenFact::Set(vec![
                    ScreenField::Coats(Some(Coats { print: 1, squeegee: 2 })),
                    ScreenField::Replaces(Some(Uuid::nil())),
                ]),
                r#"{"screen":{"set":[{"coats":{"print":1,"squeegee":2}},{"replaces":"00000000-0000-0000-0000-000000000000"}]}}"#,
            ),
            (
                ScreenFact::Set(vec![ScreenField::Mesh(Some(mesh))]),
                r#"{"screen":{"set":[{"mesh":{"count":{"per_inch":156},"thread_um":null,"opening_um":null,"open_area_permille":null,"thickness_um":null,"dyed":false}}]}}"#,
            ),
            (
                ScreenFact::Moved { to: ScreenState::OnPress, by: by.clone() },
                r#"{"screen":{"moved":{"to":"on_press","by":"Ines"}}}"#,
            ),
            (ScreenFact::Dried { dry: true, by }, r#"{"screen":{"dried":{"dry":true,"by":"Ines"}}}"#),
            (
                ScreenFact::AgeLimits(AgeLimits { coated: 14, exposed: 30 }),
                r#"{"screen":{"age_limits":{"coated":14,"exposed":30}}}"#,
            ),
            (
                ScreenFact::Undone { to: ScreenState::Coated, since: wall(5), dry: Some(wall(7)), exposed: None },
                r#"{"screen":{"undone":{"to":"coated","since":5,"dry":7,"exposed":null}}}"#,
            ),
            (
                ScreenFact::StepTimes(StepTimes::default()),
                r#"{"screen":{"step_times":{"reclaim":1200000,"coat":600000,"dry":3600000,"expose":300000,"wash_dry":2400000,"tape":300000}}}"#,
            ),
        ] {
            let fact = Fact::Screen(fact);
            assert_eq!(fact.to_json().get(), json);
            assert_eq!(Fact::from_json(json), Some(fact));
        }
    }

    #[test]
    fn values_that_no_device_records_are_out_of_bounds() {
        let far = ScreenFact::AgeLimits(AgeLimits { coated: 0, exposed: 30 });
        let tight = ScreenFact::Set(vec![ScreenField::Tension(Some(9_999))]);
        let long = ScreenFact::Moved { to: ScreenState::Clean, by: Some("x".repeat(161)) };
        let never = ScreenFact::Undone {
            to: ScreenState::Clean,
            since: WallTime::EPOCH,
            dry: None,
            exposed: Some(WallTime::MAX),
        };
        for fact in [far, tight, long, never] {
            assert!(!fact.in_bounds(), "{fact:?}");
        }
    }
}
